using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Editing.Formatting;
using NcLanguage.Machine.Files;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Format;

/// <summary>What becomes of a tidy text.</summary>
enum FormatOutcome
{
    /// <summary>It is written to standard output.</summary>
    Shown,

    /// <summary>It takes the place of the old one.</summary>
    Written,

    /// <summary>Only whether the program is tidy is told.</summary>
    Told,
}

/// <summary>Tidies programs, each by itself.</summary>
sealed class FormatRun(JobOptions job, AnalysisOptions analysis, FormatOptions options, FormatOutcome outcome)
{
    /// <summary>Tidies them all: what becomes of one does not hang on the others.</summary>
    /// <returns>The worst exit code of any.</returns>
    /// <exception cref="CannotRunException">A program that is the only one cannot be read, or not be tidied.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public int Tidy(IReadOnlyCollection<string> paths, CancellationToken cancel)
    {
        var code = ExitCode.Clean;
        foreach (var path in paths)
            code = Math.Max(code, One(path, paths.Count > 1, cancel));
        return code;
    }

    int One(string path, bool isOfSeveral, CancellationToken cancel)
    {
        try
        {
            return Tidy(path, cancel);
        }
        catch (CannotRunException e) when (isOfSeveral)
        {
            Application.Tell(e.Message);
            return ExitCode.CouldNotRun;
        }
    }

    int Tidy(string path, CancellationToken cancel)
    {
        var program = LoadedProgram.Load(path, job, analysis);
        var result = ProgramFormat.Of(program.File.Text, program.Job, options, cancel);
        cancel.ThrowIfCancellationRequested();
        if (result.Refusal is { } refusal)
            throw new CannotRunException($"{path}: {refusal}");
        var isTidy = ReferenceEquals(result.Text, program.File.Text);
        if (outcome == FormatOutcome.Told)
        {
            if (!isTidy)
                Console.WriteLine($"{ShownText.Of(path)} is not tidy");
            return isTidy ? ExitCode.Clean : ExitCode.Findings;
        }
        if (outcome == FormatOutcome.Shown || program.File.IsStandardInput)
            Show(program.File.BytesOf(result.Text));
        else if (!isTidy)
            Write(program.File, result);
        return ExitCode.Clean;
    }

    // A file or a pipe gets the very bytes; a terminal would obey some of them.
    static void Show(byte[] bytes)
    {
        if (!Console.IsOutputRedirected)
            bytes = ShownText.OfLines(bytes);
        using var output = StandardStreams.Output();
        output.Write(bytes);
    }

    static void Write(ProgramFile file, FormatResult result)
    {
        file.Replace(result.Text);
        Console.WriteLine($"{ShownText.Of(file.Path)} is tidy now; it moves as before ({Say.Count(result.Text.LineCount - 1, "line")})");
    }
}
