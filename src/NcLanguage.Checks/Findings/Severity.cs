namespace NcLanguage.Checks;

/// <summary>How bad a finding is.</summary>
public enum Severity
{
    /// <summary>Would harm or stop the machine, or cut the wrong part.</summary>
    Error,

    /// <summary>Probably not meant.</summary>
    Warning,

    /// <summary>Worth knowing.</summary>
    Note,
}
