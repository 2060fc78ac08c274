using System.Text.RegularExpressions;
using NcLanguage.EndToEnd.Lsp;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The executable as it is shipped: compiled ahead of time, with what nothing reaches trimmed away.</summary>
public sealed partial class NativeAotTests
{
    [NativeFact]
    public async Task Publishing_warns_of_nothing()
    {
        await NativeExecutable.FileAsync();
        var told = await File.ReadAllTextAsync(NativeExecutable.Log);
        // The line that the native compiler's step writes: without it there was nothing that could have warned.
        Assert.Contains("Generating native code", told, StringComparison.Ordinal);
        Assert.DoesNotMatch(Warning(), told);
    }

    [NativeFact]
    public async Task It_serves_over_pipes()
    {
        using var folder = new ScratchFolder();
        var file = folder.At("no-end.nc");
        await using var session = await LspSession.StartWithAsync([await NativeExecutable.FileAsync(), "serve"], folder.Path, "utf-8");
        Assert.Equal("nclanguage", session.Initialized.GetProperty("serverInfo").GetProperty("name").GetString());
        await session.OpenAsync(file, "%\nO1\nN10 G21 G17 G90 G54 G94\nN20 G0 X10\n%\n");
        Assert.Contains((await session.FindingsAsync(file, 1)).EnumerateArray(), d => d.GetProperty("data").GetString() == "program-end-missing");
    }

    [NativeFact]
    public async Task It_checks_the_demonstration_as_the_managed_build_does()
    {
        using var folder = new ScratchFolder();
        var native = await NativeExecutable.FileAsync();
        await CommandLine.OutputAsync([native, "demo", folder.At("demo")], TimeSpan.FromMinutes(1));
        var check = new[] { "check", folder.At("demo"), "--format", "json" };
        var told = await CommandLine.OutputAsync([native, .. check], TimeSpan.FromMinutes(1), 1);
        Assert.Contains("\"hop-hits-obstacle\"", told, StringComparison.Ordinal);
        Assert.Equal(await CommandLine.OutputAsync([.. ServerCommand.Managed, .. check], TimeSpan.FromMinutes(1), 1), told);
    }

    [GeneratedRegex(@"\bwarning\b", RegexOptions.IgnoreCase)]
    private static partial Regex Warning();
}
