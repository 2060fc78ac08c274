namespace NcLanguage.Checks.Analysis;

/// <summary>A run that is still under way was asked for what hangs on blocks that it has not come to. See <see cref="ProgramAnalysis.AsFarAsRun"/>.</summary>
public sealed class NotYetRunException : InvalidOperationException
{
    public NotYetRunException()
        : base("The run has not come to these blocks.")
    {
    }

    public NotYetRunException(string message)
        : base(message)
    {
    }

    public NotYetRunException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
