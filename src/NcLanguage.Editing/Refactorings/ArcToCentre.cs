using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes arcs that are given by their radius with their centre: I, J, K.</summary>
sealed class ArcToCentre : Refactoring
{
    public override string Name => "arcToCentre";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Place;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) =>
        !ArcBlock.IsIn(analysis, lines, byRadius: true, cancel) ? null : lines.First == lines.Last ? "Write this arc with its centre (I J K)" : "Write these arcs with their centres (I J K)";

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var arcs = ArcBlock.In(analysis, lines, byRadius: true, cancel);
        if (arcs.Count == 0)
            return Draft.Refuse("No block here is an arc by its radius of which both ends are known, and the same each time it runs.");
        var text = analysis.Text;
        var draft = new Draft(text);
        var style = WordNumber.Of(text, analysis.Machine.Readings);
        foreach (var arc in arcs)
        {
            var block = text.BlockAt(arc.Line);
            var token = block.Tokens[block.IndexOf('R')];
            var own = style with { HasPoints = style.HasPoints || token.HasPoint };
            // I before K, also where the plane's first axis is Z.
            var (one, other) = (Math.Min(arc.First, arc.Second), Math.Max(arc.First, arc.Second));
            draft.Replace(arc.Line, token.Start, token.End, $"{Word(arc, one, own, analysis.Machine.Readings)} {Word(arc, other, own, analysis.Machine.Readings)}");
        }
        return draft;
    }

    static string Word(in ArcBlock arc, int axis, WordNumber style, Readings readings)
    {
        var origin = readings.ArcCentre == ArcCentreReading.Incremental ? arc.From[axis] : 0;
        // A centre is needed to a tenth of what the ends are.
        return style.Letter((char)('I' + axis)) + WordNumber.Number((arc.Centre[axis] - origin) / arc.Unit, arc.Unit == 1 ? 4 : 6, style.HasPoints);
    }
}
