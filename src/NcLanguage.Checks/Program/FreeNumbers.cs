using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>Block numbers that the program of a block has not used. Gathered once for all the blocks that ask, which may be as many as there are.</summary>
sealed class FreeNumbers
{
    /// <summary>Numbers in a row that are looked at for a free one.</summary>
    const int MostTried = 1000;

    readonly ProgramRun _run;
    readonly List<(int Line, int Number)> _numbers = [];
    readonly HashSet<int> _targets = [];
    readonly List<OneProgram> _programs;
    bool? _hasJumps;

    FreeNumbers(ProgramRun run)
    {
        _run = run;
        _programs = [new OneProgram(0, 0, _targets)];
    }

    /// <summary>True when a block of the file may go on at another by its number.</summary>
    public bool HasJumps => _hasJumps ??= Jumps(_run);

    public static FreeNumbers Of(ProgramRun run)
    {
        var free = new FreeNumbers(run);
        for (var chunk = 0; chunk < run.Texts.Length; chunk++)
        {
            if (run.Texts[chunk].Marks.Steers)
                free.TakeTargets(run.Text.Chunks[chunk].Blocks);
            var offset = run.Text.FirstLineOf(chunk);
            foreach (var (number, line) in run.Texts[chunk].Numbers)
            {
                if (number < 0)
                {
                    free._programs.Add(new OneProgram(offset + line, free._numbers.Count, free._targets));
                    continue;
                }
                free._numbers.Add((offset + line, number));
                free._programs[^1].Add(number);
            }
        }
        return free;
    }

    /// <summary>A number that a jump names is not free, though no block has it: the jump would lead there.</summary>
    void TakeTargets(BlockList blocks)
    {
        for (var line = 0; line < blocks.Count; line++)
        {
            var block = blocks[line];
            var returns = WordEdits.IndexOfCode(block, 'M', 99) >= 0;
            foreach (ref readonly var token in block.Tokens)
                if ((token.Statement == StatementKind.Goto || (returns && token.IsWord('P'))) && token.Value is >= 0 and <= BlockNumbering.Greatest)
                    _targets.Add((int)token.Value);
        }
    }

    /// <summary>One between those of the blocks before and after where there is room, else one above all of the program.</summary>
    /// <param name="line">0-based.</param>
    public int Nearest(int line)
    {
        var (program, before, after) = Neighbours(line);
        return program.Between(before, after) ?? program.AboveAll;
    }

    /// <summary>One that lets the numbers rise over the blocks before and after; null where there is no room for one.</summary>
    /// <param name="line">0-based.</param>
    public int? Rising(int line)
    {
        var (program, before, after) = Neighbours(line);
        return after < 0 ? program.AboveAll : program.Between(before, after);
    }

    /// <summary>A number for a block put in behind a line: the one wished for where it is free and lets the numbers rise, else one near it; null where there is none.</summary>
    /// <param name="line">0-based; its own number is <paramref name="last"/>.</param>
    public int? Behind(int line, int last, int wished)
    {
        var (program, _, after) = Neighbours(line);
        var number = after > last ? program.IsFree(wished) && wished < after ? wished : program.Between(last, after) : program.IsFree(wished) ? wished : program.AboveAll;
        return number <= BlockNumbering.Greatest ? number : null;
    }

    /// <summary>The line's own program, and the numbers of the numbered blocks just before and after it there; −1 where there is none.</summary>
    (OneProgram Program, int Before, int After) Neighbours(int line)
    {
        var index = FirstWhere(_programs.Count, i => _programs[i].FirstLine > line) - 1;
        var program = _programs[index];
        var end = index + 1 < _programs.Count ? _programs[index + 1].FirstNumber : _numbers.Count;
        var here = FirstWhere(_numbers.Count, i => _numbers[i].Line >= line);
        var behind = FirstWhere(_numbers.Count, i => _numbers[i].Line > line);
        return (program, here > program.FirstNumber ? _numbers[here - 1].Number : -1, behind < end ? _numbers[behind].Number : -1);
    }

    /// <summary>The first for which something is so that stays so from there on; <paramref name="count"/> where it never is.</summary>
    static int FirstWhere(int count, Func<int, bool> isSo)
    {
        var (low, high) = (0, count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (isSo(middle))
                high = middle;
            else
                low = middle + 1;
        }
        return low;
    }

    static bool Jumps(ProgramRun run)
    {
        for (var line = 0; line < run.Text.LineCount; line++)
        {
            var block = run.BlockAt(line);
            foreach (ref readonly var token in block.Tokens)
                if (token.Kind == TokenKind.Statement)
                    return true;
            if (WordEdits.IndexOfCode(block, 'M', 99) >= 0 && block.IndexOf('P') >= 0)
                return true;
        }
        return false;
    }

    /// <summary>The numbers of one program of the file.</summary>
    sealed class OneProgram(int firstLine, int firstNumber, HashSet<int> targets)
    {
        readonly HashSet<int> _used = [];
        int _greatest;

        public int FirstLine { get; } = firstLine;

        /// <summary>Which of all the file's numbers is its first.</summary>
        public int FirstNumber { get; } = firstNumber;

        public int AboveAll
        {
            get
            {
                var number = _greatest / 10 * 10 + 10;
                while (targets.Contains(number))
                    number += 10;
                return number;
            }
        }

        public void Add(int number)
        {
            _used.Add(number);
            _greatest = Math.Max(_greatest, number);
        }

        public bool IsFree(int number) => !_used.Contains(number) && !targets.Contains(number);

        public int? Between(int before, int after) => From(before + (after - before + 1) / 2, before, after) ?? From(before + 1, before, after);

        int? From(int first, int before, int after)
        {
            for (var number = first; number > before && number < after && number - first < MostTried; number++)
                if (IsFree(number))
                    return number;
            return null;
        }
    }
}
