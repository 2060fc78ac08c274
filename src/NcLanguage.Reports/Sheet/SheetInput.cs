using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Reports.Sheet;

/// <summary>What a setup sheet is made from.</summary>
/// <param name="Path">The program's path as the user wrote it.</param>
/// <param name="Analysis">The program, checked.</param>
/// <param name="Problems">Mistakes in the setup and machine files.</param>
/// <param name="Made">When the sheet is made, by the clock on the wall.</param>
public sealed record SheetInput(string Path, ProgramAnalysis Analysis, ImmutableArray<SetupProblem> Problems, DateTimeOffset Made);
