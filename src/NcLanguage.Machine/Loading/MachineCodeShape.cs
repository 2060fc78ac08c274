using System.Collections.Immutable;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Loading;

/// <summary>The codes of a machine's own: an object of rows by their names.</summary>
static class MachineCodeShape
{
    const string LeftOut = "the code is left out";

    static readonly ObjectShape<MachineCode> Shape = new(
        "a code",
        new("does", (code, m, read) => code with { Does = read.Text(m, LeftOut) ?? "" }, Presence.Required),
        new("as", (code, m, read) => code with { As = StandsFor(m, read) }),
        new("words", (code, m, read) => code with { Words = Words(m, read) }));

    /// <summary>Those of the base, and over them those of the file.</summary>
    public static ImmutableArray<MachineCode> Read(ImmutableArray<MachineCode> basis, JsonMember member, ValueReader read)
    {
        if (!read.IsObject(member.Value, "\"codes\""))
            return basis;
        var codes = basis.ToDictionary(code => code.Text);
        foreach (var group in member.Value.Members.GroupBy(named => named.Name))
        {
            if (read.TheOnly([.. group]) is { } only && Row(only, read) is { } code)
                codes[code.Text] = code;
        }
        return [.. codes.Values.OrderBy(code => code.Letter).ThenBy(code => code.Tenths)];
    }

    static MachineCode? Row(JsonMember member, ValueReader read)
    {
        if (MachineCode.Parse(member.Name) is not var (letter, tenths))
        {
            read.Problems.Add(ProblemKind.UnknownKey, member.NameRange, $"\"{MessageText.Clip(member.Name)}\" is no name of a code, so it is ignored: one is written like \"M13\" or \"G5.1\".");
            return null;
        }
        if (MachineCode.Standard.Contains(member.Name))
        {
            read.Wrong(member.NameRange, $"{member.Name} keeps the meaning that it has on all machines", LeftOut);
            return null;
        }
        if (!read.IsObject(member.Value, $"\"{member.Name}\"", LeftOut))
            return null;
        var code = Shape.Read(new MachineCode(letter, tenths, "", [], ""), member.Value, read);
        return code.Does.Length > 0 ? code : null;
    }

    static ImmutableArray<string> StandsFor(JsonMember member, ValueReader read)
    {
        if (read.Text(member, "it does nothing that the run depends on") is not { } text)
            return [];
        var codes = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (codes.FirstOrDefault(code => !MachineCode.MayStandFor.Contains(code)) is not { } odd)
            return [.. codes.Distinct()];
        read.Wrong(member.Value.Range, $"\"as\" names {MessageText.Clip(odd)}, but a code can only stand for {string.Join(", ", MachineCode.MayStandFor)}", "it does nothing that the run depends on");
        return [];
    }

    static string Words(JsonMember member, ValueReader read)
    {
        if (read.Text(member, "it takes none") is not { } letters)
            return "";
        if (letters.All(letter => char.IsAsciiLetterUpper(letter) && !MachineCode.NoWords.Contains(letter)))
            return letters;
        read.Wrong(member.Value.Range, $"\"words\" must be capital letters without blanks, and none of {MachineCode.NoWords}", "it takes none");
        return "";
    }
}
