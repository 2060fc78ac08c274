using System.Runtime.CompilerServices;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>A G or M code of a block and the token it stands at.</summary>
public readonly record struct CodeWord(CodeEntry Code, int Token);

/// <summary>The words of one block, by letter: numbers as written, with expressions evaluated.</summary>
public sealed class BlockWords
{
    readonly double[] _values = new double[26];
    readonly int[] _tokens = new int[26];
    readonly Batch<CodeWord> _codes = new();
    // Most blocks hold no code of most groups: a bit each tells at once, so that the steps of the order need not look through the codes.
    uint _groups;
    ulong _codeBits;
    uint _present;
    uint _used;
    ulong _order;
    bool _unreadG;
    bool _unreadM;
    bool _isCodeUnknown;
    uint _wordsOfOwnCodes;

    /// <summary>The G and M codes in the order written.</summary>
    public ReadOnlySpan<CodeWord> Codes => _codes.Items;

    /// <summary>True when the block has this word (upper-case letter, not G or M).</summary>
    public bool Has(char letter) => (_present & Bit(letter)) != 0;

    /// <summary>The number of a word as written; NaN where the word is missing or its value not known.</summary>
    public double this[char letter] => Has(letter) ? _values[letter - 'A'] : double.NaN;

    /// <summary>The index of a word's token in its block; meaningful only where the block has the word.</summary>
    public int TokenOf(char letter) => _order == 0 ? _tokens[letter - 'A'] : PlainWords.TokenOf(_order, PlainWords.LetterOf(letter));

    /// <summary>True when the block holds this code.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool HasCode(char letter, int tenths) => (_codeBits & CodeBit(letter, tenths)) != 0 && FindCode(letter, tenths) >= 0;

    /// <summary>The index of a code's token, or −1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int TokenOfCode(char letter, int tenths) => (_codeBits & CodeBit(letter, tenths)) == 0 ? -1 : FindCode(letter, tenths);

    int FindCode(char letter, int tenths)
    {
        foreach (var word in _codes.Items)
            if (word.Code.Tenths == tenths && word.Code.Letter == letter)
                return word.Token;
        return -1;
    }

    /// <summary>The first code of a group, or null.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public CodeWord? Find(ModalGroup group) => (_groups & 1u << (int)group) == 0 ? null : FirstOf(group);

    CodeWord? FirstOf(ModalGroup group)
    {
        foreach (var word in _codes.Items)
            if (word.Code.Group == group)
                return word;
        return null;
    }

    /// <summary>The motion that a block read by <see cref="TryReadPlain"/> names; null where it names none.</summary>
    internal MotionMode? PlainMotion => _groups == 0 ? null : PlainWords.MotionOf(_codes.Items[0].Code.Tenths / 10);

    /// <summary>What such a block is written with.</summary>
    internal PlainLetters PlainLetters =>
        (PlainLetters)((_present >> ('X' - 'A') & 7) | (_present >> ('I' - 'A') & 3) << 3 | (_present >> ('R' - 'A') & 1) << 5 | (_present >> ('F' - 'A') & 1) << 6 | (_present >> ('N' - 'A') & 1) << 7);

    /// <summary>What such a block says of the centre of an arc.</summary>
    internal PlainCentre SayCentre() => new(PlainLetters, Has('I') ? this['I'] : 0, Has('J') ? this['J'] : 0, Has('R') ? this['R'] : 0);

    /// <summary>True when the block holds no code but one that says how axis words move.</summary>
    internal bool HasNoCodeBesideMotion => (_groups & ~(1u << (int)ModalGroup.Motion)) == 0 && !_unreadG && !_unreadM;

    /// <summary>True when the block has a G or M whose number cannot be read, or an M code that no table knows: it may have done anything.</summary>
    public bool HasUnreadCode(char letter) => letter == 'G' ? _unreadG : _unreadM;

    /// <summary>True when the number of a code hangs on a variable that is not known, or cannot be read.</summary>
    internal bool IsCodeUnknown => _isCodeUnknown;

    /// <summary>True when any word is present that the letters name.</summary>
    public bool HasAny(uint letters) => (_present & letters) != 0;

    /// <summary>True when every word of the block is one of those that the letters name, or its number.</summary>
    internal bool HasOnly(uint letters) => (_present & ~(letters | Bit('N'))) == 0;

    /// <summary>The set of one letter, to be or-ed.</summary>
    public static uint Bit(char letter) => 1u << (letter - 'A');

    internal const uint Axes = 1u << ('X' - 'A') | 1u << ('Y' - 'A') | 1u << ('Z' - 'A');

    internal void UseAll() => _used = uint.MaxValue;

    internal void Use(char letter) => _used |= Bit(letter);

    internal void UseAxes() => _used |= Axes;

    /// <summary>True when the block has this word and no code has taken it yet.</summary>
    internal bool IsFree(char letter) => (_present & ~_used & Bit(letter)) != 0;

    internal uint Unused => _present & ~_used;

    internal void Clear()
    {
        _present = 0;
        _order = 0;
        _used = Bit('N') | Bit('O');
        _codes.Clear();
        (_groups, _codeBits) = (0, 0);
        _unreadG = false;
        _unreadM = false;
        _isCodeUnknown = false;
        _wordsOfOwnCodes = 0;
    }

    // What plain moves are written with: N, how, how fast and where to, and what makes an arc in the XY plane.
    const uint PlainSet = Axes | 1u << ('N' - 'A') | 1u << ('F' - 'A') | 1u << ('I' - 'A') | 1u << ('J' - 'A') | 1u << ('R' - 'A');

    static readonly CodeWord[] PlainCodes = [.. Enumerable.Range(0, 4).Select(number => new CodeWord(CodeTable.Find('G', number * 10)!, 0))];

    /// <summary>Reads a block of nothing but numbers that could be those of a plain move: G0 to G3, axes, centre or radius, F and N, each at most once. False where there is anything else;
    /// the words have then to be cleared before they are read.</summary>
    internal bool TryReadPlain(in Block block)
    {
        var tokens = block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            ref readonly var token = ref tokens[i];
            if (token.Kind != TokenKind.Word || (token.Traits & ~TokenTraits.HasPoint) != 0)
                return false;
            if (token.Letter == 'G')
            {
                var number = (int)token.Value;
                if (number != token.Value || (uint)number > 3 || _groups != 0)
                    return false;
                TakeMotion(number, i);
                continue;
            }
            var letter = token.Letter - 'A';
            if ((uint)letter > 'Z' - 'A')
                return false;
            var bit = 1u << letter;
            if ((bit & PlainSet & ~_present) == 0 || (token.Letter == 'N' && IsOdd(token.Value, token.End - token.ValueStart)))
                return false;
            _present |= bit;
            _values[letter] = token.Value;
            _tokens[letter] = i;
        }
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void TakeMotion(int number, int token)
    {
        _codes.Next() = PlainCodes[number] with { Token = token };
        _groups = 1u << (int)ModalGroup.Motion;
        _codeBits = CodeBit('G', number * 10);
    }

    /// <summary>Becomes what was read and kept of a block as <see cref="TryReadPlain"/> reads it, but for the block's number.</summary>
    public void Become(in PlainWords kept)
    {
        Clear();
        _order = kept.Order;
        if (kept.Code >= 0)
            TakeMotion(kept.Code, PlainWords.TokenOfCode(_order));
        TakeLetter('X', PlainLetters.X, kept);
        TakeLetter('Y', PlainLetters.Y, kept);
        TakeLetter('Z', PlainLetters.Z, kept);
        TakeLetter('I', PlainLetters.I, kept);
        TakeLetter('J', PlainLetters.J, kept);
        TakeLetter('R', PlainLetters.R, kept);
        TakeLetter('F', PlainLetters.F, kept);
        TakeLetter('N', PlainLetters.N, kept);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void TakeLetter(char letter, PlainLetters one, in PlainWords kept)
    {
        if ((kept.Letters & one) == 0)
            return;
        _present |= Bit(letter);
        _values[letter - 'A'] = one == PlainLetters.N ? double.NaN : kept[one];
    }

    /// <param name="block">The block.</param>
    /// <param name="variables">Gives its variables their values.</param>
    /// <param name="step">Takes what is wrong with its words.</param>
    /// <param name="own">The codes of the machine's own; null where it has none.</param>
    internal void Read(in Block block, ref VariableReader variables, Step step, OwnCodes? own)
    {
        var (mCodes, isBehindStatement) = (0, false);
        // Which token text begins with is worked out by going over all of them: once for a block, however many could be it.
        int? text = null;
        var tokens = block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            ref readonly var token = ref tokens[i];
            if (token.Kind != TokenKind.Word || token.IsMalformed)
                step.Events |= StepEvents.OddText;
            if (token.Kind is TokenKind.BareLetter or TokenKind.Statement or TokenKind.Unknown && (text ??= block.TextIndex) == i)
                break;
            if (token.Kind == TokenKind.BareLetter || token.IsMalformed)
                NoteUnread(token.Letter);
            isBehindStatement |= token.Kind == TokenKind.Statement;
            if (token.Kind != TokenKind.Word || token.Letter == ':')
                continue;
            var value = ValueOf(block, token, ref variables);
            // A condition may have kept the control from reading it.
            if (!isBehindStatement)
                NoteImpossible(token, i, variables, step);
            var letter = (char)token.Letter;
            if (letter is 'G' or 'M')
            {
                ReadCode(letter, value, i, step, own);
                if (letter == 'M' && ++mCodes == MostMCodes + 1)
                    step.Faults.Add(new Fault(FaultKind.TooManyMCodes, i, 'M', 0, MostMCodes, 0));
                continue;
            }
            if (letter == 'N' && IsOdd(value, token.End - token.ValueStart))
                step.Events |= StepEvents.OddText;
            if (Has(letter))
            {
                step.Faults.Add(new Fault(FaultKind.AddressRepeated, i, letter, TokenOf(letter), value, 0));
                continue;
            }
            _present |= Bit(letter);
            _values[letter - 'A'] = value;
            _tokens[letter - 'A'] = i;
        }
        _used |= _wordsOfOwnCodes;
        RefuseUnknownWords(step);
    }

    /// <summary>Whether a block number may be one that the published language does not know. Five digits are what it allows; greater ones are told once for a file.</summary>
    static bool IsOdd(double number, int length) =>
        !(number >= 0) || number != Math.Floor(number) || (length > 5 && number is not (>= 100_000 and < 1e9));

    const uint WithoutMeaning = 1u << 0 | 1u << 1 | 1u << 2 | 1u << ('E' - 'A') | 1u << ('U' - 'A') | 1u << ('V' - 'A') | 1u << ('W' - 'A');

    // The arguments of a call may have any letter.
    void RefuseUnknownWords(Step step)
    {
        if (!HasAny(WithoutMeaning) || Find(ModalGroup.MacroCall) is not null)
            return;
        for (var letter = 'A'; letter <= 'W'; letter++)
        {
            if ((_present & WithoutMeaning & ~_wordsOfOwnCodes & Bit(letter)) == 0)
                continue;
            step.Faults.Add(new Fault(FaultKind.WordUnknown, TokenOf(letter), letter, 0, this[letter], 0));
            Use(letter);
        }
    }

    /// <summary>M codes that one block may hold (NISTIR 6556 §3.3.5).</summary>
    public const int MostMCodes = 4;

    void NoteUnread(byte letter)
    {
        _unreadG |= letter == 'G';
        _unreadM |= letter == 'M';
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void ReadCode(char letter, double value, int index, Step step, OwnCodes? own)
    {
        if (double.IsNaN(value))
        {
            _isCodeUnknown = true;
            return;
        }
        var tenths = Math.Round(value * 10);
        var isNumber = value >= 0 && Math.Abs(value * 10 - tenths) < 0.001 && tenths < 10000;
        var code = isNumber ? CodeTable.Find(letter, (int)tenths) : null;
        if (code is null)
        {
            if (isNumber && own?.Find(letter, (int)tenths) is { } ownCode)
            {
                TakeOwn(ownCode, value, index, step);
                return;
            }
            _unreadM |= letter == 'M';
            step.Faults.Add(new Fault(FaultKind.CodeUnknown, index, letter, 0, value, 0));
            return;
        }
        Add(code, value, index, step);
    }

    void TakeOwn(OwnCode own, double value, int index, Step step)
    {
        _wordsOfOwnCodes |= own.Words;
        foreach (var code in own.As)
            Add(code, value, index, step);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void Add(CodeEntry code, double value, int index, Step step)
    {
        foreach (var other in _codes.Items)
        {
            if (!Conflict(other.Code, code))
                continue;
            step.Faults.Add(new Fault(FaultKind.CodesConflict, index, code.Letter, other.Token, value, 0));
            // Of a group without a mode both are looked at further: without G53 its axis words would lead elsewhere.
            if (code.Group == ModalGroup.NonModal)
                break;
            return;
        }
        _codes.Add(new CodeWord(code, index));
        _groups |= 1u << (int)code.Group;
        _codeBits |= CodeBit(code.Letter, code.Tenths);
    }

    /// <summary>One of 64 bits for a code; several codes share one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static ulong CodeBit(char letter, int tenths) => 1ul << ((tenths / 10 * 5 + tenths + letter) & 63);

    /// <summary>Whether two codes may not stand in one block. Mist and flood may both be on (NISTIR 6556 table 4); a cycle and a motion code may not
    /// stand together unless G80 is the cycle.</summary>
    public static bool Conflict(CodeEntry a, CodeEntry b)
    {
        if (a.Letter != b.Letter || a.Group == ModalGroup.Other)
            return false;
        if (a.Group == ModalGroup.NonModal)
            return IsOfGroupZero(a.Tenths) && b.Group == ModalGroup.NonModal && IsOfGroupZero(b.Tenths);
        if (a.Group == b.Group)
            return a.Group != ModalGroup.Coolant || a.Tenths == b.Tenths || a.Tenths == 90 || b.Tenths == 90;
        return (a.Group == ModalGroup.Motion && b.Group == ModalGroup.Cycle && b.Tenths != 800)
            || (b.Group == ModalGroup.Motion && a.Group == ModalGroup.Cycle && a.Tenths != 800);
    }

    // NISTIR 6556 table 4, group 0, of which §3.3.5 lets no two stand together; what other controls add (G9, G52) is not of it.
    static bool IsOfGroupZero(int tenths) => tenths is 40 or 100 or 280 or 300 or 530 or 920 or 921 or 922 or 923;

    /// <summary>The number of a word or setting; NaN where it is not known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double ValueOf(in Block block, in Token token, ref VariableReader variables)
    {
        if (!token.ReadsVariables)
            return token.Value;
        // The sign that may stand before an expression is read with it.
        var result = token.Kind == TokenKind.Assignment
            ? Expression.ReadSetting(block.Line, token.ValueStart, ref variables)
            : Expression.Read(block.Line, token.ValueStart, ref variables);
        variables.Error = result.Error;
        return result.Value;
    }

    /// <summary>Tells that a value just read has no number with what its variables hold. What is wrong with the text alone has a finding of its own.</summary>
    internal static void NoteImpossible(in Token token, int index, in VariableReader variables, Step step)
    {
        if (!token.ReadsVariables || token.IsMalformed || variables.Error == ExpressionError.None)
            return;
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.Kind == FaultKind.ValueImpossible && fault.Token == index)
                return;
        step.Faults.Add(new Fault(FaultKind.ValueImpossible, index, (char)token.Letter, 0, (double)variables.Error, 0));
    }
}
