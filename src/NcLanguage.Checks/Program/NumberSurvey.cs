using System.Collections;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>Where the block numbers of a file stand twice in one program, and where they fall. Looked up once for each version of a text: a row of a million numbers takes some milliseconds.</summary>
sealed class NumberSurvey
{
    readonly List<RepeatedNumbers> _repeats = [];
    readonly List<FallingNumber> _falls = [];

    NumberSurvey()
    {
    }

    /// <summary>The stretches of repeated numbers, in their order.</summary>
    public IReadOnlyList<RepeatedNumbers> Repeats => _repeats;

    /// <summary>Of each program in which one is there the first number that is lower than the one before it, and stands nowhere above.</summary>
    public IReadOnlyList<FallingNumber> Falls => _falls;

    public static NumberSurvey Of(ProgramRun run)
    {
        var survey = new NumberSurvey();
        if (BlockNumbering.Rises(run))
            return survey;
        var (used, numbers) = (new NumberSet(GreatestOf(run)), new Numbers(run));
        while (!numbers.AreOver)
            survey.TakeProgram(ref numbers, used);
        return survey;
    }

    /// <summary>Takes up the numbers of one program.</summary>
    /// <param name="numbers">Stand before the first of them; then behind the last.</param>
    /// <param name="used">Is empty, and left so.</param>
    void TakeProgram(ref Numbers numbers, NumberSet used)
    {
        var (program, firstRepeat) = (numbers, _repeats.Count);
        var (last, lastLine, hasFallen, isRepeating) = (-1, -1, false, false);
        while (numbers.TryNext(out var number, out var line))
        {
            if (used.Add(number))
            {
                if (number < last && !hasFallen)
                {
                    _falls.Add(new FallingNumber(line, number, lastLine, last));
                    hasFallen = true;
                }
                isRepeating = false;
            }
            else if (isRepeating && number > last)
                _repeats[^1] = _repeats[^1] with { Count = _repeats[^1].Count + 1 };
            else
            {
                _repeats.Add(new RepeatedNumbers(line, number, -1, 1));
                isRepeating = true;
            }
            (last, lastLine) = (number, line);
        }
        var again = program;
        while (again.TryNext(out var number, out _))
            used.Remove(number);
        if (_repeats.Count > firstRepeat)
            FindFirsts(program, used, firstRepeat);
    }

    /// <summary>Finds where the repeated numbers of a program stand first.</summary>
    void FindFirsts(Numbers program, NumberSet wanted, int firstRepeat)
    {
        var lines = new Dictionary<int, int>();
        for (var i = firstRepeat; i < _repeats.Count; i++)
            if (lines.TryAdd(_repeats[i].Number, -1))
                wanted.Add(_repeats[i].Number);
        for (var open = lines.Count; open > 0 && program.TryNext(out var number, out var line);)
        {
            if (!wanted.Remove(number))
                continue;
            lines[number] = line;
            open--;
        }
        for (var i = firstRepeat; i < _repeats.Count; i++)
            _repeats[i] = _repeats[i] with { FirstLine = lines[_repeats[i].Number] };
    }

    static int GreatestOf(ProgramRun run)
    {
        var greatest = 0;
        foreach (var text in run.Texts)
            greatest = Math.Max(greatest, text.NumberRange.Greatest);
        return greatest;
    }

    /// <summary>Goes through the block numbers of a file.</summary>
    struct Numbers(ProgramRun run)
    {
        int _chunk, _next;

        public readonly bool AreOver => _chunk == run.Texts.Length;

        /// <summary>The next number of the program; false, behind its end, where there is none.</summary>
        /// <param name="line">Its line, from 0.</param>
        public bool TryNext(out int number, out int line)
        {
            for (; _chunk < run.Texts.Length; (_chunk, _next) = (_chunk + 1, 0))
            {
                var numbers = run.Texts[_chunk].Numbers;
                if (_next == numbers.Length)
                    continue;
                number = numbers[_next].Number;
                line = run.Text.FirstLineOf(_chunk) + numbers[_next++].Line;
                return number >= 0;
            }
            (number, line) = (-1, -1);
            return false;
        }
    }

    /// <summary>A set of block numbers: a bit for each up to a bound that no sound program comes to.</summary>
    sealed class NumberSet(int greatest)
    {
        const int MostBits = 1 << 26;

        readonly BitArray _bits = new(Math.Min(greatest, MostBits - 1) + 1);
        readonly HashSet<int> _others = [];

        public bool Add(int number)
        {
            if (number >= _bits.Length)
                return _others.Add(number);
            var isNew = !_bits[number];
            _bits[number] = true;
            return isNew;
        }

        public bool Remove(int number)
        {
            if (number >= _bits.Length)
                return _others.Remove(number);
            var was = _bits[number];
            _bits[number] = false;
            return was;
        }
    }
}

/// <summary>Block numbers that stand further up in their program already, one block after the other and each greater than the one before.</summary>
/// <param name="Line">The line, from 0, of the first.</param>
/// <param name="Number">Its number.</param>
/// <param name="FirstLine">The line, from 0, on which that stands first.</param>
/// <param name="Count">How many they are.</param>
readonly record struct RepeatedNumbers(int Line, int Number, int FirstLine, int Count);

/// <summary>A block number that is lower than the one before it in its program.</summary>
/// <param name="Line">Its line, from 0.</param>
/// <param name="LastLine">The line, from 0, of the one before it.</param>
readonly record struct FallingNumber(int Line, int Number, int LastLine, int Last);
