using System.Diagnostics;

namespace NcLanguage.EndToEnd.Support;

/// <summary>What a finished process left.</summary>
sealed record CommandResult(int ExitCode, string Output, string Errors);

/// <summary>Runs a command to its end; one that takes longer than allowed is ended with all that it started.</summary>
static class CommandLine
{
    public static async Task<CommandResult> RunAsync(
        IReadOnlyList<string> command,
        TimeSpan limit,
        IReadOnlyDictionary<string, string>? environment = null,
        string? folder = null)
    {
        var start = new ProcessStartInfo(command[0], command.Skip(1))
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder ?? Repository.Root,
        };
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
            start.Environment[name] = value;

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        using var timeout = new CancellationTokenSource(limit);
        try
        {
            await process.WaitForExitAsync(timeout.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{string.Join(' ', command)} took longer than {limit.TotalSeconds} s.\n{await errors}");
        }

        return new CommandResult(process.ExitCode, await output, await errors);
    }

    /// <summary>As <see cref="RunAsync"/>, and fails the test unless the exit code is one of those allowed.</summary>
    public static async Task<string> OutputAsync(IReadOnlyList<string> command, TimeSpan limit, params int[] allowed)
    {
        var result = await RunAsync(command, limit);
        Assert.True(
            allowed.Length == 0 ? result.ExitCode == 0 : allowed.Contains(result.ExitCode),
            $"{string.Join(' ', command)} ended with {result.ExitCode}:\n{result.Output}{result.Errors}");
        return result.Output;
    }
}
