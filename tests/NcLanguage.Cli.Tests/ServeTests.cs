using System.Diagnostics;
using System.Runtime.Versioning;
using System.Text;
using System.Text.RegularExpressions;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>What the command hands to the server; what the server does with it is tested there.</summary>
public sealed partial class ServeTests
{
    /// <summary>Where pages lie: XDG Base Directory Specification, XDG_CACHE_HOME and its default $HOME/.cache; a path that is not full is passed over.</summary>
    [Theory]
    [InlineData("CACHE", "cache")]
    [InlineData("", "home/.cache")]
    [InlineData("not/full", "home/.cache")]
    [SupportedOSPlatform("linux")]
    public async Task A_finding_links_to_the_page_of_its_rule_in_the_cache_folder(string setting, string expected)
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var scratch = new Scratch();
        var start = new ProcessStartInfo(Command.Executable, ["serve"]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = scratch.At("home");
        start.Environment["XDG_CACHE_HOME"] = setting == "CACHE" ? scratch.At("cache") : setting;
        using var server = Process.Start(start)!;
        try
        {
            await SendAsync(server, """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{"textDocument":{"publishDiagnostics":{"codeDescriptionSupport":true}}}}}""");
            await SendAsync(server, """{"jsonrpc":"2.0","method":"initialized","params":{}}""");
            await SendAsync(server, """{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"untitled:a.nc","languageId":"nc","version":1,"text":"G21 G90 G17 G54\nG999\nM30\n"}}}""");
            var page = new Uri(await FirstLinkAsync(server)).LocalPath;
            Assert.StartsWith(scratch.At($"{expected}/nclanguage/reference/0."), page, StringComparison.Ordinal);
            Assert.Contains("code-unknown", await File.ReadAllTextAsync(page), StringComparison.Ordinal);
        }
        finally
        {
            server.Kill();
            await server.WaitForExitAsync();
        }
    }

    /// <summary>A script may hand over a variable that is empty.</summary>
    [Theory]
    [InlineData("--setup")]
    [InlineData("--machine")]
    public void A_file_without_a_name_does_not_keep_the_server_from_its_work(string option)
    {
        var outcome = Command.Run(null, [], ["serve", option, ""]);
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Errors));
    }

    /// <summary>A client that takes nothing more will not say good-bye either.</summary>
    [Fact]
    public async Task A_server_whose_words_nobody_takes_ends()
    {
        if (OperatingSystem.IsWindows())
            return;
        using var server = Process.Start(new ProcessStartInfo(Command.Executable, ["serve"]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
        server.StandardOutput.Close();
        await SendAsync(server, """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}""");
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        await server.WaitForExitAsync(patience.Token);
        Assert.Equal(1, server.ExitCode);
        Assert.DoesNotContain("   at ", await server.StandardError.ReadToEndAsync(patience.Token), StringComparison.Ordinal);
    }

    static async Task SendAsync(Process server, string message)
    {
        await server.StandardInput.WriteAsync($"Content-Length: {Encoding.UTF8.GetByteCount(message)}\r\n\r\n{message}");
        await server.StandardInput.FlushAsync();
    }

    static async Task<string> FirstLinkAsync(Process server)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        var (told, buffer) = (new StringBuilder(), new char[4096]);
        while (true)
        {
            if (Link().Match(told.ToString()) is { Success: true } link)
                return link.Groups[1].Value;
            var read = await server.StandardOutput.ReadAsync(buffer, patience.Token);
            Assert.NotEqual(0, read);
            told.Append(buffer, 0, read);
        }
    }

    [GeneratedRegex("\"code\":\"NC1008\",\"codeDescription\":\\{\"href\":\"([^\"]+)\"")]
    private static partial Regex Link();
}
