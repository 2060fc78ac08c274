using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Editing.Formatting;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Puts the blocks of a subprogram in place of its call, as often as it is called for. The subprogram stays for other calls.</summary>
sealed class WriteOutCall : Refactoring
{
    const int MostPasses = 20;

    public override string Name => "writeOutCall";

    public override string Kind => "refactor.inline";

    public override Reach Reach => Reach.Place;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        if (lines.First != lines.Last || !Call.TryRead(analysis.Text.BlockAt(lines.First), out var call))
            return null;
        call = call.In(analysis.Text);
        return call.Passes > 1 ? $"Write out O{call.Number} here, {call.Passes} times" : $"Write out O{call.Number} here";
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        Call.TryRead(text.BlockAt(lines.First), out var call);
        call = call.In(text);
        if (call.Passes > MostPasses)
            return Draft.Refuse($"O{call.Number} is called {call.Passes} times: written out more than {MostPasses} times nobody reads it.");
        var own = FlowText.Of(text, null);
        var called = own.LinesOfProgram(call.Number) is { } at ? (text, at) : Elsewhere(analysis, call.Number);
        if (called is not var (source, region))
            return Draft.Refuse(analysis.Main.Job.Programs?.WhyNotRead(call.Number) is { } why
                ? $"O{call.Number} is not in this file, and beside it {why}."
                : $"O{call.Number} stands neither in this file nor in one beside it.");
        if (Body.Read(source, region, out var body) is { } sentence)
            return Draft.Refuse($"O{call.Number} cannot be written out: {sentence}.");
        var written = new List<string>();
        for (var pass = 0; pass < call.Passes; pass++)
            written.AddRange(body);
        if (call.NumberWord.Length > 0 && written.Count > 0)
            written[0] = $"{call.NumberWord} {written[0]}";
        var draft = new Draft(text);
        draft.ReplaceLines(lines.First, lines.First, written);
        return draft;
    }

    static (SourceText, (int First, int End))? Elsewhere(ProgramAnalysis analysis, int number)
    {
        if (analysis.Main.Job.Programs?.Find(number) is not { } file)
            return null;
        return (file.Text, FlowText.Of(file.Text, file.Name).LinesOfProgram(number) ?? (0, file.Text.LineCount));
    }

    /// <summary>A block that calls and does nothing else.</summary>
    readonly record struct Call(int Number, int Passes, string NumberWord)
    {
        const int MostFourDigits = 9999;

        /// <summary>As the control reads it: P with more than four digits is how many times, then the program's four, where the text has no program of the whole number but one of these.</summary>
        public Call In(SourceText text)
        {
            if (Number <= MostFourDigits || FlowText.Of(text, null) is not { } own || own.LinesOfProgram(Number) is not null || own.LinesOfProgram(Number % (MostFourDigits + 1)) is null)
                return this;
            return this with { Number = Number % (MostFourDigits + 1), Passes = Number / (MostFourDigits + 1) };
        }

        public static bool TryRead(in Block block, out Call call)
        {
            call = default;
            if (WordEdits.IndexOfCode(block, 'M', 98) < 0)
                return false;
            var (number, passes, word) = (-1, 1, "");
            foreach (ref readonly var token in block.Tokens)
            {
                if (token.IsComment || (token.IsWord('M') && token.Value == 98))
                    continue;
                var isWhole = token.Kind == TokenKind.Word && !token.IsExpression && token.Value == Math.Truncate(token.Value) && token.Value is >= 0 and < int.MaxValue;
                if (isWhole && token.IsWord('P'))
                    number = (int)token.Value;
                else if (isWhole && token.IsWord('L') && token.Value >= 1)
                    passes = (int)token.Value;
                else if (isWhole && token.IsWord('N'))
                    word = block.StringOf(token);
                else
                    return false;
            }
            call = new Call(number, passes, word);
            return number >= 0;
        }
    }

    /// <summary>The blocks of a subprogram, without its number, its return and block numbers.</summary>
    static class Body
    {
        /// <summary>Why they cannot stand elsewhere, one clause; null where they can.</summary>
        public static string? Read(SourceText text, (int First, int End) region, out List<string> lines)
        {
            lines = [];
            for (var line = region.First; line < region.End; line++)
            {
                var block = text.BlockAt(line);
                if (JumpTargets.In(block) >= 0)
                    return $"line {line + 1} jumps to a block number";
                var returns = WordEdits.IndexOfCode(block, 'M', 99);
                if (!IsUtf8(block.Line))
                    return $"line {line + 1} has characters that are no UTF-8";
                var kept = Kept(block, returns);
                if (kept.Length > 0 || (block.Tokens.Length == 0 && lines.Count > 0 && returns < 0))
                    lines.Add(kept);
                if (returns < 0)
                    continue;
                while (lines.Count > 0 && lines[^1].Length == 0)
                    lines.RemoveAt(lines.Count - 1);
                return lines.Count == 0 ? "it holds no blocks" : HasWordsBehind(text, line + 1, region.End) ? $"it goes on behind its M99 in line {line + 1}" : null;
            }
            return "it has no M99";
        }

        static bool HasWordsBehind(SourceText text, int line, int end)
        {
            for (; line < end; line++)
                if (text.BlockAt(line).HasWords)
                    return true;
            return false;
        }

        static bool IsUtf8(ReadOnlySpan<byte> line) => !Encoding.UTF8.GetString(line).Contains('\uFFFD', StringComparison.Ordinal);

        static string Kept(in Block block, int returns)
        {
            var isHead = block.BeginsProgram;
            var kept = new StringBuilder();
            var at = 0;
            for (var i = 0; i < block.Tokens.Length; i++)
            {
                ref readonly var token = ref block.Tokens[i];
                var isOut = i == returns || token.IsWord('N') || (isHead && (token.IsWord('O') || token.IsWord(':') || token.IsComment)) || token.Kind == TokenKind.Percent;
                if (!isOut)
                    kept.Append(Encoding.UTF8.GetString(block.Line[at..token.End]));
                at = token.End;
            }
            return kept.ToString().Trim();
        }
    }
}
