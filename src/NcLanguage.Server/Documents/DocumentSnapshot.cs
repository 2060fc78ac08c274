using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Jobs;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>An analysis and the setup and machine it was made with.</summary>
sealed record AnalysedProgram(ProgramAnalysis Analysis, LoadedJob Job);

/// <summary>One version of an open document. It never changes; a newer one supersedes it.</summary>
/// <param name="Uri">The client's name of the document.</param>
/// <param name="Version">The client's number of this version.</param>
/// <param name="Text">The text of this version.</param>
/// <param name="Look">What is known before the analysis is there.</param>
/// <param name="Analysis">Ends with the analysis, or cancelled where the snapshot was superseded first.</param>
/// <param name="Superseded">Cancelled when a newer version came, the setup changed or the document was closed.</param>
/// <param name="Typing">How somebody is at work on it; null where it stands as it was opened or saved.</param>
sealed record DocumentSnapshot(string Uri, int Version, SourceText Text, Look Look, Task<AnalysedProgram> Analysis, CancellationToken Superseded, Typing? Typing = null);
