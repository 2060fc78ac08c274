using System.Runtime.Versioning;

namespace NcLanguage.EndToEnd.Support;

/// <summary>The page of an editor's client: what it tells people to write into their settings is what the tests run.</summary>
static class ClientPage
{
    /// <summary>The first block of code in a language on the page, with this repository in the place of the one that people clone.</summary>
    public static string Code(string client, string language)
    {
        var page = File.ReadAllText(Repository.At("editor-clients", client, "README.md"));
        var fence = $"```{language}\n";
        var start = page.IndexOf(fence, StringComparison.Ordinal);
        Assert.True(start >= 0, $"The page of {client} has no block of {language}.");
        start += fence.Length;
        return page[start..page.IndexOf("```", start, StringComparison.Ordinal)].Replace("~/nclanguage", Repository.Root, StringComparison.Ordinal);
    }

    /// <summary>A PATH on which <c>nclanguage</c> is found first, as the pages ask for it.</summary>
    [SupportedOSPlatform("linux")]
    public static string PathWithServer(ScratchFolder scratch)
    {
        var command = string.Join(' ', ServerCommand.Words.Select(word => $"'{word}'"));
        var script = scratch.Write("bin/nclanguage", $"#!/bin/sh\nexec {command} \"$@\"\n");
        File.SetUnixFileMode(script, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return Path.GetDirectoryName(script) + Path.PathSeparator + Environment.GetEnvironmentVariable("PATH");
    }
}
