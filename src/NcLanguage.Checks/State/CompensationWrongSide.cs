using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Compensation;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A closed contour whose way in begins on the side that the tool is kept off.</summary>
public sealed class CompensationWrongSide : Rule
{
    /// <summary>Contours that are looked at.</summary>
    const int MostContours = 100;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2046",
        Name = "compensation-wrong-side",
        Severity = Severity.Warning,
        Title = "The way in crosses the contour to the side that G41 or G42 asks for",
        Finds = "A contour of feeds at one level below the top of the stock that closes, round which G41 or G42 keeps the tool outside while the way in begins inside, or inside while it begins outside.",
        AtTheMachine = "The tool crosses the wall that it is to cut, and goes round on the wrong side of it: the part is too small, or the pocket too large, by the whole diameter. G41 and G42 are mixed up, or the contour is written the other way round.",
        Setup = """
            { "stock": { "min": [0, 0, -20], "max": [100, 60, 0] },
              "tools": [ { "number": 2, "kind": "end-mill", "diameter": 8, "radiusOffset": 2, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T2 M6
            S4000 M3
            G0 X-15 Y-15
            G43 H2 Z-5 M8
            G42 D2 G1 X2 F500
            ~^^
            Y58
            X98
            Y2
            X-15
            G40 Y-15
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T2 M6
            S4000 M3
            G0 X-15 Y-15
            G43 H2 Z-5 M8
            G41 D2 G1 X2 F500
            Y58
            X98
            Y2
            X-15
            G40 Y-15
            G0 Z50 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes G42 for G41, or G41 for G42. A choice, since the contour may be what is wrong.",
        NotFound = "Contours that do not close or cross themselves, such as open pockets; those that a helix, several levels, a loop or a call goes through; a way in that begins within the tool's radius of the contour; a full turn that goes back on its neighbours (arc-other-way); anything without a stock.",
        Source = "G41 keeps the tool to the left of the path and G42 to the right (NISTIR 6556 §3.5.10); left of a way that runs counterclockwise lies its inside (plane geometry).",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (run.Job.Setup.Stock is not { } stock)
            return;
        var looked = new HashSet<int>();
        for (var part = 0; part < run.Results.Length; part++)
        {
            var result = run.Results[part];
            if ((result.AllSets & Slot.Compensation) == 0 || result.IsElsewhere)
                continue;
            for (var at = 0; at < result.Sets.Length; at++)
            {
                if ((result.Sets[at] & Slot.Compensation) == 0 || run.LineOf(part, at) is var line && !looked.Add(line))
                    continue;
                file.Cancel.ThrowIfCancellationRequested();
                if (looked.Count > MostContours)
                    return;
                if (Look(run, part, at, stock.Max.Z) is not { } message || HasTurnTheOtherWay(run, line, stock.Max.Z))
                    continue;
                var block = run.BlockAt(line);
                ref readonly var word = ref block.Tokens[TokenOf(block)];
                file.Report(this, line, word.Start, word.End, message);
            }
        }
    }

    /// <summary>What is told of the contour that begins at a block of a part; null where nothing is. Most keys leave most contours as they were.</summary>
    static string? Look(ProgramRun run, int part, int at, double top)
    {
        var result = run.Results[part];
        foreach (var known in result.ContoursLookedAt)
            if (known.At == at && known.HoldsAt(run, part))
                return known.Message;
        var message = Look(run, run.LineOf(part, at), top, out var last);
        // Where the run leaves the order of the text, a contour's parts are not those that stand behind it.
        if (run.Flow is null)
        {
            var look = new ContourLook(at, run.Results[(part + 1)..(run.FirstRunOf(last).Part + 1)].ToArray(), message);
            result.ContoursLookedAt = [.. result.ContoursLookedAt.Where(known => known.At != at), look];
        }
        return message;
    }

    /// <summary>Whether a full turn of the contour goes back on the moves before and behind it, as arc-other-way tells: then its G2 or G3 is what is wrong.</summary>
    static bool HasTurnTheOtherWay(ProgramRun run, int line, double top)
    {
        CompensatedContour.From(run, line, top, out var last);
        foreach (var (at, arc) in run.TurnedArcs)
            if (at > line && at <= last && arc is { IsWholeTurn: true, TurnsBack: true })
                return true;
        return false;
    }

    static int TokenOf(in Block block) => Math.Max(WordEdits.IndexOfCode(block, 'G', 41), WordEdits.IndexOfCode(block, 'G', 42));

    static string? Look(ProgramRun run, int line, double top, out int last)
    {
        last = line;
        var block = run.BlockAt(line);
        var token = TokenOf(block);
        if (token < 0 || block.IsSkippable || CompensatedContour.From(run, line, top, out last) is not { Radius: > 0 } contour || contour.Loop() is not { Count: > 2 } loop)
            return null;
        var area = AreaOf(loop);
        // Round less than the tool itself nothing is told: a slit that is gone along forth and back.
        if (!(Math.Abs(area) > Math.PI * contour.Radius * contour.Radius) || IsNear(contour.Begin, loop, contour.Radius))
            return null;
        var (keepsInside, beginsInside) = (contour.IsLeft == area > 0, IsInside(contour.Begin, loop));
        if (keepsInside == beginsInside)
            return null;
        var (kept, begun) = keepsInside ? ("inside", "outside") : ("outside", "inside");
        return $"{Quote.Word(block, block.Tokens[token])} keeps the tool {kept} this contour, which runs {(area > 0 ? "counterclockwise" : "clockwise")}, and the way in begins {begun}: the tool crosses the wall. Is {(contour.IsLeft ? "G42" : "G41")} meant?";
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var block = analysis.Main.BlockAt(finding.Line);
        var (left, right) = (WordEdits.IndexOfCode(block, 'G', 41), WordEdits.IndexOfCode(block, 'G', 42));
        return left >= 0 ? [Swapped(left, "G42")] : right >= 0 ? [Swapped(right, "G41")] : [];

        Fix Swapped(int token, string word) => new($"Write {word}", FixSafety.Choice, [WordEdits.Replace(finding.Line, analysis.Main.BlockAt(finding.Line), token, word)]);
    }

    /// <summary>Area within a closed way, mm²; positive where it runs counterclockwise.</summary>
    static double AreaOf(List<Point2> loop)
    {
        var twice = 0.0;
        for (var i = 0; i < loop.Count; i++)
            twice += Point2.Cross(loop[i], loop[(i + 1) % loop.Count]);
        return twice / 2;
    }

    static bool IsNear(Point2 place, List<Point2> loop, double within)
    {
        for (var i = 0; i < loop.Count; i++)
            if (CompensatedContour.Distance(place, loop[i], loop[(i + 1) % loop.Count]) < within)
                return true;
        return false;
    }

    /// <summary>Whether a closed way winds round a place: a way in that goes round itself does so twice.</summary>
    static bool IsInside(Point2 place, List<Point2> loop)
    {
        var turns = 0;
        for (var i = 0; i < loop.Count; i++)
        {
            var (a, b) = (loop[i], loop[(i + 1) % loop.Count]);
            if (a.Y > place.Y != b.Y > place.Y && Point2.Cross(b - a, place - a) > 0 == b.Y > a.Y)
                turns += b.Y > a.Y ? 1 : -1;
        }
        return turns != 0;
    }
}
