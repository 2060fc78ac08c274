using System.Collections.Immutable;
using NcLanguage.Checks;

namespace NcLanguage.Server.Documents;

/// <summary>Hears what becomes of the versions of an open program. It is called on workers, each time with a question that it may ask under a lock of its own:
/// is this still the newest version?</summary>
interface IProgramListener
{
    /// <summary>The analysis of a version is done, and all its findings have been told.</summary>
    void Analysed(DocumentSnapshot snapshot, AnalysedProgram program, Func<bool> isNewest);

    /// <summary>There are findings: of a large program first what is known at once, then all.</summary>
    void Found(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest);

    /// <summary>No key has followed the last one for a while.</summary>
    /// <param name="findings">All of them.</param>
    void Rested(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest);

    /// <summary>The analysis threw.</summary>
    void Failed(DocumentSnapshot snapshot, Exception fault, Func<bool> isNewest);
}
