namespace NcLanguage.Checks.Comparison;

/// <summary>A program that stands behind the first of a text.</summary>
/// <param name="number">Its number; −1 where it is not plain.</param>
sealed class FurtherProgram(int number)
{
    readonly Func<CancellationToken, MotionReader>? _begin;
    MotionList? _followed;

    /// <summary>One that a run before has come to.</summary>
    public FurtherProgram(int number, Func<CancellationToken, MotionReader> begin)
        : this(number) => _begin = begin;

    /// <summary>One that none has.</summary>
    public FurtherProgram(int number, MotionList followed)
        : this(number) => _followed = followed;

    public int Number { get; } = number;

    /// <summary>Whether a run before has come to it, so that what it does is seen there.</summary>
    public bool IsReached => _begin is not null;

    /// <summary>What it does when it is begun by itself.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public MotionList Followed(CancellationToken cancel)
    {
        if (_followed is null && _begin is not null)
            _followed = MotionList.Of(_begin(cancel));
        return _followed!;
    }
}
