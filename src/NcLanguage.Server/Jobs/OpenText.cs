using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Jobs;

/// <summary>What the editor holds of a file.</summary>
/// <param name="Uri">The address it was opened by.</param>
/// <param name="Text">The text as it stands there.</param>
/// <param name="InForce">The text that programs go by: of a setup, machine or cutting file that cannot be read for the moment the last one that could.</param>
/// <param name="Job">What <paramref name="Text"/> says alone; null for a program.</param>
sealed record OpenText(string Uri, SourceText Text, SourceText InForce, LoadedJob? Job = null);
