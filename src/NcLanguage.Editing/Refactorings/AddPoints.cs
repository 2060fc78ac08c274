using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes whole lengths with a decimal point, so that every control takes them for the same: X15 as X15., and where numbers without a
/// point are least increments as X0.015.</summary>
sealed class AddPoints : Refactoring
{
    public override string Name => "addPoints";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Lines;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var (first, last) = lines.MeantOf(analysis.Text);
        foreach (var line in Lines.Each(first, last, cancel))
            foreach (ref readonly var token in analysis.Text.BlockAt(line).Tokens)
                if (token.Letter is (byte)'X' or (byte)'Y' or (byte)'Z' && IsPlain(token))
                    return lines.IsCursor ? "Add decimal points" : "Add decimal points in these lines";
        return null;
    }

    protected override bool NeedsEveryWay => false;

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        // What a word is must be the same each time its block runs.
        var units = new Dictionary<(int Line, int Token), LengthUnit>();
        var others = new HashSet<(int Line, int Token)>();
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            var walk = new ProgramWalk(text, job, cancel);
            while (walk.MoveNext())
            {
                var (line, step) = (walk.Line, walk.Step);
                if (!lines.Means(line))
                    continue;
                var tokens = text.BlockAt(line).Tokens;
                for (var i = 0; i < tokens.Length; i++)
                {
                    if (!IsPlain(tokens[i]) || WordSenses.Of(step, tokens[i], job.Readings) is var sense && sense == WordSense.Other && !MayBeLength(tokens[i]))
                        continue;
                    if (sense != WordSense.Length || (units.TryGetValue((line, i), out var unit) && unit != step.After.Units))
                        others.Add((line, i));
                    units[(line, i)] = step.After.Units;
                }
            }
        }
        var draft = new Draft(text);
        foreach (var ((line, index), unit) in units)
            if (!others.Contains((line, index)))
                Write(draft, line, text.BlockAt(line), index, unit, analysis.Machine.Readings);
        return draft;
    }

    static void Write(Draft draft, int line, in Block block, int index, LengthUnit unit, Readings readings)
    {
        ref readonly var token = ref block.Tokens[index];
        if (readings.Integers == IntegerReading.Whole || token.Value == 0)
            draft.Replace(line, token.End, token.End, ".");
        else if (unit != LengthUnit.Unknown)
            draft.Replace(line, token.ValueStart, token.End, WordNumber.Number(token.Value * UnitLength.OfIncrement(unit), 4, hasPoint: true));
    }

    static bool IsPlain(in Token token) => token.Kind == TokenKind.Word && !token.HasPoint && !token.IsExpression && !token.IsMalformed && MayBeLength(token);

    static bool MayBeLength(in Token token) => (char)token.Letter is 'X' or 'Y' or 'Z' or 'I' or 'J' or 'K' or 'R' or 'Q';
}
