using System.Net;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.MotionView;

/// <summary>
/// The motion of a program as one page to step through, without network: markup, style and script stand in Page/ and are put together here with the data.
/// </summary>
/// <remarks>
/// What comes from the program cannot end the data's element, because the JSON has no less-than sign as such, and could not run if it did: the policy
/// of the page (Content Security Policy, level 3) names its one script and its one style sheet, by hash or by the nonce that an editor gives, and lets
/// nothing be fetched.
/// </remarks>
public static class MotionPage
{
    // In the order in which they need each other.
    static readonly string[] Scripts = ["data", "path", "camera", "palette", "scene", "left", "tool", "view", "cursor", "panels", "controls", "main"];

    /// <summary>The whole page, UTF-8.</summary>
    /// <param name="nonce">Given where the page is shown inside an editor, whose policy lets only scripts and styles with this nonce run.</param>
    public static byte[] Write(MotionRecording recording, ProjectionMethod method = ProjectionMethod.FirstAngle, string? nonce = null)
    {
        ArgumentNullException.ThrowIfNull(recording);
        using var page = new MemoryStream();
        var style = Read("page.css");
        var script = Script();
        Append(page, $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src {SourceOf(style, nonce)}; script-src {SourceOf(script, nonce)}; base-uri 'none'; form-action 'none'">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <title>{WebUtility.HtmlEncode(Path.GetFileName(recording.Path))}: motion</title>
            <style{Nonce(nonce)}>
            """);
        Append(page, style);
        Append(page, "</style>\n</head>\n<body>\n");
        Append(page, Read("page.html")
            .Replace("{{caution}}", WebUtility.HtmlEncode(MotionNotes.Caution), StringComparison.Ordinal)
            .Replace("{{projection}}", Symbol(method), StringComparison.Ordinal));
        Append(page, "<script type=\"application/json\" id=\"motion\">");
        // The usual encoder writes every less-than sign, quote and ampersand of a text as an escape.
        using (var json = new Utf8JsonWriter(page))
            MotionJson.Write(recording, method, json);
        Append(page, $"</script>\n<script{Nonce(nonce)}>");
        Append(page, script);
        Append(page, "</script>\n</body>\n</html>\n");
        return page.ToArray();
    }

    /// <summary>The style sheet, for the test of its colours.</summary>
    internal static string Style => Read("page.css");

    /// <summary>The symbol of the projection.</summary>
    static string Symbol(ProjectionMethod method)
    {
        var svg = new SvgWriter(23, 11, ViewNames.Of(method));
        Marks.Projection(svg, 2.5, 2.5, method);
        // Within a page of HTML a drawing needs no address of its kind of markup.
        return svg.End().Replace(" xmlns=\"http://www.w3.org/2000/svg\"", "", StringComparison.Ordinal).Trim();
    }

    static string Script()
    {
        var script = new StringBuilder("\n(() => {\n'use strict';\n");
        foreach (var name in Scripts)
            script.Append(Read(name + ".js"));
        return script.Append("})();\n").ToString();
    }

    static string SourceOf(string text, string? nonce) =>
        nonce is null ? $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'" : $"'nonce-{WebUtility.HtmlEncode(nonce)}'";

    static string Nonce(string? nonce) => nonce is null ? "" : $" nonce=\"{WebUtility.HtmlEncode(nonce)}\"";

    static void Append(Stream page, string text) => page.Write(Encoding.UTF8.GetBytes(text));

    static string Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("motion/" + name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
