using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Clearance;

/// <summary>Something that a tool meets of the stock.</summary>
interface IToolContact
{
    /// <summary>The cut, by its place among the part's; −1 for a rapid.</summary>
    int Cut { get; }

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

    /// <summary>The first contact of each tool in a run, with its line from 0.</summary>
    /// <param name="file">The run.</param>
    /// <param name="contacts">What a part of it meets on cuts; rapids are none of them.</param>
    public static List<(int Line, T Contact)> FirstOfEachTool<T>(in FileContext file, Func<PartStock, T[]> contacts)
        where T : struct, IToolContact
    {
        var found = new List<(int Line, T Contact)>();
        HashSet<int>? told = null;
        var parts = file.Stock.Parts;
        for (var part = 0; part < parts.Length; part++)
            foreach (var contact in contacts(parts[part]))
                if ((told ??= []).Add(contact.Tool))
                    found.Add((file.Run.LineOf(part, parts[part].Source.Cuts[contact.Cut].Line), contact));
        return found;
    }
}
