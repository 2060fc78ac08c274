namespace NcLanguage.Checks.Clearance;

/// <summary>Something that a tool meets of the stock.</summary>
interface IToolContact
{
    int Tool { get; }
}

/// <summary>What the tools of a part of a run meet, each once.</summary>
static class ToolContacts
{
    public static bool Has<T>(this List<T>? contacts, int tool)
        where T : struct, IToolContact
    {
        foreach (var contact in contacts ?? [])
            if (contact.Tool == tool)
                return true;
        return false;
    }
}
