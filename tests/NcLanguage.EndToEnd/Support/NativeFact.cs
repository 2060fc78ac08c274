namespace NcLanguage.EndToEnd.Support;

/// <summary>
/// A test that publishes first, which takes minutes: run on a build server, and elsewhere where the published file is there
/// already or NCLANGUAGE_E2E_NATIVE asks for it.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
sealed class NativeFactAttribute : FactAttribute
{
    public NativeFactAttribute()
    {
        var asked = Environment.GetEnvironmentVariable("NCLANGUAGE_E2E_NATIVE") is { Length: > 0 };
        if (!Editors.MustRun && !asked && NativeExecutable.Current is null)
            Skip = "Publishing takes minutes; set NCLANGUAGE_E2E_NATIVE=1 to have it done.";
    }

    /// <summary>The same for a test that needs an editor besides.</summary>
    public NativeFactAttribute(Editor editor)
        : this()
    {
        if (!Editors.MustRun)
            Skip ??= Editors.Missing(editor);
    }
}
