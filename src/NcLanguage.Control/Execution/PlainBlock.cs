using NcLanguage.Control.State;

namespace NcLanguage.Control.Execution;

/// <summary>The letters beside G that a plain move is written with. The axes are the bits that moves name them by.</summary>
[Flags]
enum PlainLetters : byte
{
    None = 0, X = 1, Y = 2, Z = 4, I = 8, J = 16, R = 32, F = 64, N = 128,
    Axes = X | Y | Z,
    Straight = Axes | F | N,
}

/// <summary>What a block says that could be a plain move, however it was read: as much of it as is needed to know where it leaves the tool.</summary>
/// <param name="letters">What it is written with; which number N bears is not known.</param>
/// <param name="motion">The motion that it names; null where it names none.</param>
/// <param name="x">Lengths in mm, without meaning where the block has no such word.</param>
/// <param name="feed">In mm/min.</param>
readonly struct PlainBlock(PlainLetters letters, MotionMode? motion, double x, double y, double z, double feed)
{
    public readonly PlainLetters Letters = letters;
    public readonly MotionMode? Motion = motion;
    public readonly double X = x;
    public readonly double Y = y;
    public readonly double Z = z;
    public readonly double Feed = feed;

    public bool Has(PlainLetters letter) => (Letters & letter) != 0;

    public bool HasOnly(PlainLetters letters) => (Letters & ~letters) == 0;
}
