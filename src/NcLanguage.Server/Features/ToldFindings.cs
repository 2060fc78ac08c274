using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Features;

/// <summary>What was told of a program before the keys that come now: while they flow, what they bring is told as a note, for a half-written word is no fault. It is told as what
/// it is when they rest, when the line is left and when the program is saved.</summary>
/// <param name="Line">The line that the keys go into, from 0; −1 where none do.</param>
/// <param name="Told">By name and line; of what is still to come by name, since it stands at a new line with each one that is written.</param>
/// <param name="Notes">What was told as a note only, in the same way.</param>
/// <param name="Settled">What was told of the program as it was opened or saved last, by name and the lines from there to the end, which keys before it do not change.</param>
sealed record ToldFindings(int Line, HashSet<(string Name, int Line)> Told, HashSet<(string Name, int Line)> Notes, HashSet<(string Name, int FromEnd)> Settled)
{
    public static ToldFindings None { get; } = new(-1, [], [], []);

    /// <summary>Which of these findings are told as notes, and what is known as told from then on.</summary>
    /// <param name="lines">How many lines the program has.</param>
    public (bool[] AreNotes, ToldFindings After) Next(Typing? typing, StillToCome toCome, ImmutableArray<Finding> findings, int lines)
    {
        var areNotes = new bool[findings.Length];
        if (typing is not { IsFlowing: true } keys)
        {
            for (var i = 0; i < areNotes.Length; i++)
                areNotes[i] = Asks(findings[i]);
            return (areNotes, new ToldFindings(-1, Names(findings, NameOf), [], typing is null ? Names(findings, FromEnd) : Settled));
        }
        HashSet<(string, int)> told = keys.Line == Line || Notes.Count == 0 ? Told : [.. Told, .. Notes];
        HashSet<(string, int)> notes = [];
        for (var i = 0; i < areNotes.Length; i++)
        {
            var name = NameOf(findings[i]);
            var isNew = !told.Contains(name);
            if (isNew)
                notes.Add(name);
            areNotes[i] = isNew || Asks(findings[i]);
        }
        return (areNotes, new ToldFindings(keys.Line, told, notes, Settled));

        bool Asks(Finding finding) => toCome.Asks(finding, Settled.Contains(FromEnd(finding)));
        (string, int) FromEnd(Finding finding) => (finding.Name, lines - finding.Line);
        (string, int) NameOf(Finding finding) => (finding.Name, Asks(finding) ? -1 : finding.Line);
    }

    static HashSet<(string, int)> Names(ImmutableArray<Finding> findings, Func<Finding, (string, int)> nameOf)
    {
        // Made with each key that is followed by a rest: with room for all, it is made once.
        var names = new HashSet<(string, int)>(findings.Length);
        foreach (var finding in findings)
            names.Add(nameOf(finding));
        return names;
    }
}
