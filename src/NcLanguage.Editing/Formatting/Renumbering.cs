using System.Buffers;
using System.Globalization;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Formatting;

/// <summary>New block numbers for a whole text, in even steps from the beginning of each program, and the jumps that follow them.</summary>
sealed class Renumbering
{
    /// <summary>Greatest block number (NISTIR 6556 §3.3.1: five digits).</summary>
    const int Greatest = 99999;

    readonly int[] _numbers;
    readonly Dictionary<int, int>[] _newOf;
    readonly int[] _programOf;

    Renumbering(int[] numbers, Dictionary<int, int>[] newOf, int[] programOf) => (_numbers, _newOf, _programOf) = (numbers, newOf, programOf);

    /// <param name="refusal">Why it cannot be done, where the answer is null.</param>
    public static Renumbering? Of(SourceText text, int step, out string? refusal)
    {
        var numbers = new int[text.LineCount];
        var programOf = new int[text.LineCount];
        var newOf = new List<Dictionary<int, int>> { new() };
        var repeated = new HashSet<(int Program, int Number)>();
        var next = step;
        for (var line = Leader.LinesOf(text); line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            if (block.BeginsProgram)
            {
                newOf.Add(new());
                next = step;
            }
            programOf[line] = newOf.Count - 1;
            if (!TakesNumber(block))
                continue;
            if (!BlockFormat.CanBeRead(block))
            {
                refusal = $"line {line + 1} cannot be read to its end, so it cannot be numbered";
                return null;
            }
            if (next > Greatest)
            {
                refusal = $"in steps of {step} the numbers would go beyond {Greatest}: take a smaller step";
                return null;
            }
            if (block.NumberIndex is >= 0 and var at && block.Tokens[at].Value is >= 0 and <= int.MaxValue && !newOf[^1].TryAdd((int)block.Tokens[at].Value, next))
                repeated.Add((newOf.Count - 1, (int)block.Tokens[at].Value));
            numbers[line] = next;
            next += step;
        }
        var made = new Renumbering(numbers, [.. newOf], programOf);
        refusal = made.FindObstacle(text, repeated);
        return refusal is null ? made : null;
    }

    public void Write(int line, in Block block, ArrayBufferWriter<byte> output)
    {
        var number = _numbers[line] > 0 ? Encoding.ASCII.GetBytes("N" + _numbers[line].ToString(CultureInfo.InvariantCulture)) : [];
        var target = JumpTargets.In(block);
        if (target < 0 || !_newOf[_programOf[line]].TryGetValue((int)block.Tokens[target].Value, out var goesTo))
        {
            BlockFormat.Write(block, number, output);
            return;
        }
        var token = block.Tokens[target];
        byte[] changed = [.. block.Line[..token.ValueStart], .. Encoding.ASCII.GetBytes(goesTo.ToString(CultureInfo.InvariantCulture)), .. block.Line[token.End..]];
        BlockFormat.Write(new Block(changed, BlockLexer.LexLine(changed)), number, output);
    }

    /// <summary>The new numbers as edits, which leave every other byte as it is.</summary>
    public List<Edit> Edits(SourceText text)
    {
        var edits = new List<Edit>();
        for (var line = 0; line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            if (_numbers[line] > 0 && NumberEdit(line, block) is { } edit)
                edits.Add(edit);
            var target = JumpTargets.In(block);
            if (target >= 0 && _newOf[_programOf[line]].TryGetValue((int)block.Tokens[target].Value, out var goesTo) && goesTo != block.Tokens[target].Value)
                edits.Add(new Edit(line, block.Tokens[target].ValueStart, block.Tokens[target].End, goesTo.ToString(CultureInfo.InvariantCulture)));
        }
        return edits;
    }

    Edit? NumberEdit(int line, in Block block)
    {
        var number = _numbers[line].ToString(CultureInfo.InvariantCulture);
        var present = block.NumberIndex;
        if (present >= 0)
            return block.Tokens[present].Value == _numbers[line] ? null : new Edit(line, block.Tokens[present].ValueStart, block.Tokens[present].End, number);
        var first = 0;
        while (first + 1 < block.Tokens.Length && BlockFormat.StandsBeforeNumber(block.Tokens[first]))
            first++;
        var letter = IsLower(block) ? "n" : "N";
        return new Edit(line, block.Tokens[first].Start, block.Tokens[first].Start, letter + number + " ");
    }

    static bool IsLower(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind == TokenKind.Word)
                return block.Line[token.Start] >= 'a';
        return false;
    }

    /// <summary>The first jump that could not be made to follow.</summary>
    string? FindObstacle(SourceText text, HashSet<(int Program, int Number)> repeated)
    {
        for (var line = 0; line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            var target = JumpTargets.In(block);
            if (target < 0)
                continue;
            ref readonly var token = ref block.Tokens[target];
            if (token.IsExpression || double.IsNaN(token.Value))
                return $"line {line + 1} jumps to a number that is worked out, which would not follow";
            if (token.IsWord('P'))
                return $"line {line + 1} returns to a block of the program that calls, whose number would not follow";
            if (token.Value % 1 != 0 || !_newOf[_programOf[line]].ContainsKey((int)token.Value))
                return $"line {line + 1} jumps to N{Say.Number(token.Value)}, which its program does not have, so that another block might come to bear it";
            if (repeated.Contains((_programOf[line], (int)token.Value)))
                return $"line {line + 1} jumps to N{(int)token.Value}, which stands more than once";
        }
        return null;
    }

    /// <summary>Whether a block is numbered: not % alone, program numbers, comments alone and statements behind an O word.</summary>
    public static bool TakesNumber(in Block block)
    {
        if (block.ProgramNumberIndex >= 0)
            return false;
        foreach (ref readonly var token in block.Tokens)
            if (!token.IsComment && token.Kind is not (TokenKind.Percent or TokenKind.Skip))
                return true;
        return false;
    }
}
