using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Features;

/// <summary>What was told of a program before the keys that come now: while they flow, what they bring is held back, for a half-written word is no fault. It is told
/// when they rest, when the line is left and when the program is saved.</summary>
/// <param name="Line">The line that the keys go into, from 0; −1 where none do.</param>
/// <param name="Told">By name and line; of what is still to come by name, since it stands at a new line with each one that is written.</param>
/// <param name="Held">What was held back, in the same way.</param>
internal sealed record ToldFindings(int Line, ImmutableHashSet<(string Name, int Line)> Told, ImmutableHashSet<(string Name, int Line)> Held)
{
    public static ToldFindings None { get; } = new(-1, [], []);

    /// <summary>What is to be told of these findings, and what is known as told from then on.</summary>
    public (ImmutableArray<Finding> Shown, ToldFindings After) Next(Typing? typing, StillToCome toCome, ImmutableArray<Finding> findings)
    {
        if (typing is not { IsFlowing: true } keys) return (findings, new ToldFindings(-1, [.. findings.Select(NameOf)], []));
        ImmutableHashSet<(string, int)> told = keys.Line == Line ? Told : Told.Union(Held);
        ImmutableArray<Finding> shown = [.. findings.Where(finding => told.Contains(NameOf(finding)))];
        return shown.Length == findings.Length
            ? (findings, new ToldFindings(keys.Line, told, []))
            : (shown, new ToldFindings(keys.Line, told, [.. findings.Select(NameOf).Where(name => !told.Contains(name))]));

        (string, int) NameOf(Finding finding) => (finding.Name, toCome.Asks(finding) ? -1 : finding.Line);
    }
}
