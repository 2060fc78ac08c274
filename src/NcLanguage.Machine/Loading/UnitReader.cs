using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Reads a file's "units" ahead of all lengths.</summary>
static class UnitReader
{
    static readonly string[] Choices = [LengthUnit.Mm.Name, LengthUnit.Inch.Name];

    /// <summary>The file's unit of length: mm where it does not say, unknown where it cannot be told.</summary>
    public static LengthUnit Read(JsonValue root, ProblemList problems)
    {
        var given = root.Members.Where(member => member.Name == "units").ToList();
        if (given.Count == 0 || (given.Count == 1 && given[0].Value.Kind == JsonKind.Null))
            return LengthUnit.Mm;
        // A repeated name is reported by the shape of the file.
        if (given.Count > 1)
            return LengthUnit.Unknown;
        var read = new ValueReader(problems, LengthUnit.Unknown);
        var name = read.Choice(given[0], Choices, "no length of this file is used");
        return name is null ? LengthUnit.Unknown : name == LengthUnit.Inch.Name ? LengthUnit.Inch : LengthUnit.Mm;
    }
}
