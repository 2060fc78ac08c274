namespace NcLanguage.Control.Execution;

/// <summary>What a block that could be a plain move says of the centre of an arc, in the program's unit.</summary>
/// <param name="letters">What it is written with.</param>
/// <param name="i">Lengths, 0 where the block has no such word.</param>
readonly struct PlainCentre(PlainLetters letters, double i, double j, double r)
{
    public readonly double I = i;
    public readonly double J = j;
    public readonly double R = r;

    public bool IsByRadius => (letters & PlainLetters.R) != 0;

    public bool HasBoth => (letters & (PlainLetters.I | PlainLetters.J)) == (PlainLetters.I | PlainLetters.J);
}
