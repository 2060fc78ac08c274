namespace NcLanguage.Server.Documents;

/// <summary>What is known of a version while its run is under way: enough to answer what is asked about the lines near the edit.</summary>
sealed class Look
{
    readonly TaskCompletionSource _come = new(TaskCreationOptions.RunContinuationsAsynchronously);
    AnalysedProgram? _program;

    /// <summary>That of a version whose analysis is there.</summary>
    public static Look Past { get; } = Ended();

    /// <summary>Done when there is something to look at, or will be nothing.</summary>
    public Task Come => _come.Task;

    /// <summary>It answers what hangs on no block that has not run. Null before there is one, and after the whole run is there.</summary>
    public AnalysedProgram? Program => Volatile.Read(ref _program);

    public void Show(AnalysedProgram program)
    {
        Volatile.Write(ref _program, program);
        _come.TrySetResult();
    }

    /// <summary>The whole is there, or will never be: what was shown holds parts of the version before, and is let go.</summary>
    public void End()
    {
        Volatile.Write(ref _program, null);
        _come.TrySetResult();
    }

    static Look Ended()
    {
        var look = new Look();
        look.End();
        return look;
    }
}
