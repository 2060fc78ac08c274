using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes arcs that are given by their centre with their radius: below zero for more than half a turn. Full circles cannot be said so.</summary>
sealed class ArcToRadius : Refactoring
{
    /// <summary>Decimals that are tried: a radius needs more of them the nearer the arc is to half a turn.</summary>
    const int FewestDecimals = 3, MostDecimals = 6;

    public override string Name => "arcToRadius";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Place;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) =>
        !ArcBlock.IsIn(analysis, lines, byRadius: false, cancel) ? null : lines.First == lines.Last ? "Write this arc with its radius (R)" : "Write these arcs with their radius (R)";

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var arcs = ArcBlock.In(analysis, lines, byRadius: false, cancel);
        var text = analysis.Text;
        var draft = new Draft(text);
        var style = WordNumber.Of(text, analysis.Machine.Readings);
        var isNear = false;
        foreach (var arc in arcs)
        {
            if (arc.IsFullCircle)
                continue;
            var block = text.BlockAt(arc.Line);
            var first = FirstCentreWord(block, arc);
            var token = block.Tokens[first];
            if (RadiusOf(arc, style.HasPoints || token.HasPoint) is not { } radius)
            {
                isNear = true;
                continue;
            }
            draft.Replace(arc.Line, token.Start, token.End, style.Letter('R') + radius);
            draft.Remove(arc.Line, block, IsOther(block, arc, first));
        }
        if (draft.Edits.Count > 0)
            return draft;
        return Draft.Refuse(arcs.Count == 0 ? "No block here is an arc by its centre of which both ends are known, and the same each time it runs."
            : isNear ? "The arc is so near to half a turn that R does not say its centre to 0.0005 mm."
            : "A full circle begins where it ends: R cannot say where its centre lies.");
    }

    static int FirstCentreWord(in Block block, in ArcBlock arc)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (IsCentre(block.Tokens[i], arc))
                return i;
        return -1;
    }

    static bool IsCentre(in Token token, in ArcBlock arc) => token.IsWord((char)('I' + arc.First)) || token.IsWord((char)('I' + arc.Second));

    static Func<int, bool> IsOther(in Block block, in ArcBlock arc, int first)
    {
        var others = new HashSet<int>();
        for (var i = first + 1; i < block.Tokens.Length; i++)
            if (IsCentre(block.Tokens[i], arc))
                others.Add(i);
        return others.Contains;
    }

    /// <summary>The number of R, with the fewest decimals that bring the centre back to where it is.</summary>
    static string? RadiusOf(in ArcBlock arc, bool hasPoint)
    {
        var radius = (arc.IsMoreThanHalf ? -arc.Radius : arc.Radius) / arc.Unit;
        for (var decimals = FewestDecimals; decimals <= MostDecimals; decimals++)
        {
            var rounded = Math.Round(radius, decimals, MidpointRounding.AwayFromZero);
            var centre = Arcs.CentreFromRadius(
                arc.From[arc.First], arc.From[arc.Second], arc.To[arc.First], arc.To[arc.Second], rounded * arc.Unit, arc.Clockwise, arc.Tolerance);
            if (centre is { } at && Math.Abs(at.A - arc.Centre[arc.First]) < MotionProof.WorkedOut && Math.Abs(at.B - arc.Centre[arc.Second]) < MotionProof.WorkedOut)
                return WordNumber.Number(rounded, decimals, hasPoint);
        }
        return null;
    }
}
