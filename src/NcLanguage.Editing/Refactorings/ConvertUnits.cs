using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes a whole program in inches instead of millimetres, or the other way: every length and feed, and the word that says the unit.</summary>
sealed class ConvertUnits : Refactoring
{
    /// <summary>Decimals of lengths that are tried, the fewest that keep the motion within the tolerance.</summary>
    const int FewestDecimals = 4, MostDecimals = 8;

    /// <summary>Figures that a feed needs to stay the same to a ten-thousandth.</summary>
    const int FeedFigures = 6;

    public override string Name => "convertUnits";

    public override string Kind => "source.convertUnits";

    public override Reach Reach => Reach.Program;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        // Where no block says the unit, a length may be in either.
        if (analysis.Main.FirstSetter(Slot.Units) < 0)
            return null;
        return IsInch(analysis) ? "Convert the program to millimetres" : "Convert the program to inches";
    }

    static bool IsInch(ProgramAnalysis analysis) =>
        analysis.Main.FirstSetter(Slot.Units) is >= 0 and var line && analysis.Main.StepAt(line).After.Units == LengthUnit.Inch;

    protected override bool NeedsEveryWay => false;

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var plan = new Plan(analysis, IsInch(analysis) ? LengthUnit.Inch : LengthUnit.Millimetre);
        if (plan.Read(cancel) is { } sentence)
            return Draft.Refuse(sentence);
        // More decimals make no run shorter.
        foreach (var job in MotionProof.JobsOf(analysis))
            if (MotionProof.NotKnown(analysis.Text, job, NeedsEveryWay, cancel) is { } why)
                return Draft.Refuse(why);
        Draft? draft = null;
        for (var tried = 2 * FewestDecimals; tried <= 2 * MostDecimals + 1; tried++)
        {
            draft = plan.Write(tried / 2, raisesPecks: tried % 2 == 1);
            if (draft.IsEmpty || MotionProof.MovesAlike(analysis, Draft.Apply(analysis.Text, draft.Edits), Tolerance, cancel))
                break;
        }
        return draft!;
    }

    /// <summary>What is to be written anew, read from the runs of the program.</summary>
    sealed class Plan(ProgramAnalysis analysis, LengthUnit from)
    {
        readonly SourceText _text = analysis.Text;
        readonly Readings _readings = analysis.Machine.Readings;
        readonly SortedDictionary<(int Line, int Token), WordSense> _words = [];
        readonly HashSet<int> _ran = [];
        string? _refusal;

        double Factor => from == LengthUnit.Inch ? UnitLength.MmPerInch : 1 / UnitLength.MmPerInch;

        /// <summary>Why it cannot be done, one sentence; null where it can.</summary>
        public string? Read(CancellationToken cancel)
        {
            foreach (var job in MotionProof.JobsOf(analysis))
            {
                var walk = new ProgramWalk(_text, job, cancel);
                while (walk.MoveNext())
                    Note(walk.Line, walk.Step);
                if (walk.Elsewhere >= 0)
                    _refusal ??= $"Line {walk.Elsewhere + 1} calls a program in another file, which would still be read in {(from == LengthUnit.Inch ? "inches" : "millimetres")}.";
            }
            for (var line = 0; line < _text.LineCount && _refusal is null; line++)
                if (!_ran.Contains(line) && HasLengths(_text.BlockAt(line)))
                    _refusal = $"Line {line + 1} does not run here, so what its words mean cannot be told.";
            return _refusal;
        }

        static bool HasLengths(in Block block)
        {
            foreach (ref readonly var token in block.Tokens)
                if (token.Kind is TokenKind.Word && (char)token.Letter is 'X' or 'Y' or 'Z' or 'I' or 'J' or 'K' or 'R' or 'Q' or 'F')
                    return true;
            return false;
        }

        void Note(int line, Step step)
        {
            _ran.Add(line);
            var block = _text.BlockAt(line);
            if ((step.Events & (StepEvents.ReadsPlace | StepEvents.WritesDatum)) != 0)
                _refusal ??= $"Line {line + 1} reads or writes a place by a variable, whose number would not follow.";
            if (step.After.SurfaceSpeed && step.Words.Has('S'))
                _refusal ??= $"Line {line + 1}: S is a cutting speed there (G96), in metres or feet per minute by the unit in force.";
            for (var i = 0; i < block.Tokens.Length; i++)
            {
                ref readonly var token = ref block.Tokens[i];
                var sense = WordSenses.Of(step, token, _readings);
                if (sense == WordSense.Other)
                    continue;
                if (sense == WordSense.NotClear || token.IsMalformed || (_words.TryGetValue((line, i), out var other) && other != sense))
                    _refusal ??= $"Line {line + 1}: whether {block.StringOf(token)} is a length cannot be told.";
                else if (token.ReadsVariables && !(token.Letter is (byte)'F' && step.After.FeedMode == FeedMode.InverseTime))
                    _refusal ??= $"Line {line + 1}: {block.StringOf(token)} hangs on a variable, whose number would not follow.";
                else if (step.After.Units != from)
                    _refusal ??= $"Line {line + 1} is read in the other unit: a program in both cannot be converted.";
                _words[(line, i)] = sense;
            }
        }

        /// <param name="raisesPecks">Whether the strokes of a hole are rounded up: a hair less than an even share of the depth would need one more of them.</param>
        public Draft Write(int decimals, bool raisesPecks)
        {
            var draft = new Draft(_text);
            foreach (var ((line, index), sense) in _words)
            {
                var block = _text.BlockAt(line);
                ref readonly var token = ref block.Tokens[index];
                draft.Replace(line, token.ValueStart, token.End, sense == WordSense.Feed ? Feed(token) : Length(token, decimals, raisesPecks));
            }
            if (!draft.IsEmpty)
                WriteUnit(draft);
            return draft;
        }

        void WriteUnit(Draft draft)
        {
            var (old, now) = (CodeOf(from), CodeOf(from == LengthUnit.Inch ? LengthUnit.Millimetre : LengthUnit.Inch));
            var isSaid = false;
            foreach (var line in _ran)
            {
                var block = _text.BlockAt(line);
                for (var i = 0; i < block.Tokens.Length; i++)
                {
                    if (!block.Tokens[i].IsWord('G') || block.Tokens[i].Value != old)
                        continue;
                    draft.Replace(line, block.Tokens[i].ValueStart, block.Tokens[i].End, $"{now}");
                    isSaid = true;
                }
            }
            var first = _ran.Where(line => WordEdits.FirstWord(_text.BlockAt(line)) >= 0).DefaultIfEmpty(-1).Min();
            if (!isSaid && first >= 0)
                draft.Add(WordEdits.AtHead(first, _text.BlockAt(first), $"G{now}"));
        }

        int CodeOf(LengthUnit unit) => UnitLength.CodeOf(unit == LengthUnit.Inch, _readings.Units);

        string Length(in Token token, int decimals, bool raisesPecks)
        {
            var value = token.Value * UnitLength.OfOne(token, from, _readings) * Factor;
            var hasPoint = token.HasPoint || _readings.Integers == IntegerReading.Increments;
            if (raisesPecks && token.IsWord('Q'))
                value = Math.Ceiling(Math.Round(value * Math.Pow(10, decimals), 3)) / Math.Pow(10, decimals);
            return WordNumber.Number(value, decimals, hasPoint);
        }

        string Feed(in Token token)
        {
            var value = token.Value * Factor;
            var whole = value > 0 ? (int)Math.Ceiling(Math.Log10(value)) : 0;
            return WordNumber.Number(value, Math.Clamp(FeedFigures - whole, 0, MostDecimals), token.HasPoint);
        }
    }
}
