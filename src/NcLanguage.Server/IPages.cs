using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Server;

/// <summary>What a page is made of.</summary>
/// <param name="Path">The program's file, or its address in the editor where it was never saved.</param>
/// <param name="Analysis">The program, checked.</param>
/// <param name="Problems">Mistakes in the setup and machine files.</param>
public sealed record PageInput(string Path, ProgramAnalysis Analysis, ImmutableArray<SetupProblem> Problems);

/// <summary>The pages of a program, made outside of the server, which knows no reports.</summary>
public interface IPages
{
    /// <summary>The motion view.</summary>
    /// <param name="input">The program.</param>
    /// <param name="nonce">Of the editor's own policy for scripts; null where a browser shows the page.</param>
    /// <param name="cancel">Stops it.</param>
    string MotionView(PageInput input, string? nonce, CancellationToken cancel);

    /// <summary>The setup sheet.</summary>
    string SetupSheet(PageInput input, CancellationToken cancel);

    /// <summary>Puts a page where a browser finds it, and gives its path.</summary>
    /// <exception cref="IOException">It could not be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    string Write(string name, string page);
}
