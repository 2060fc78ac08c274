using System.Collections.Immutable;
using System.Text.Json;
using NcLanguage.Checks.Cutting;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>One thing that may be written at the cursor of a setup, machine or cutting file; byte offsets in the text.</summary>
public sealed record JobFileItem(string Label, string NewText, string Meaning, bool IsName)
{
    /// <summary>Byte offset where a comma is to be put in as well; −1 for none.</summary>
    public int CommaAt { get; init; } = -1;

    /// <summary>The same with places to fill in, as LSP writes them; null where there is nothing to fill in.</summary>
    public string? Snippet { get; init; }
}

/// <summary>What may be written, and what it takes the place of.</summary>
public sealed record JobFileItems(int Start, int End, IReadOnlyList<JobFileItem> Items)
{
    public static JobFileItems None { get; } = new(0, 0, []);
}

/// <summary>What a setup or machine file can name that stands elsewhere.</summary>
/// <param name="Cutting">The cutting data that go with the file.</param>
/// <param name="Machines">The names of the machine files beside it.</param>
/// <param name="Variables">Asks for the variables, as #100, that the programs beside it read.</param>
public sealed record JobFileSurroundings(CuttingTable Cutting, IReadOnlyList<string> Machines, Func<IEnumerable<string>> Variables)
{
    public static JobFileSurroundings None { get; } = new(CuttingTable.BuiltIn, [], () => []);
}

/// <summary>What stands at a place and what it means.</summary>
public sealed record JobFileHover(int Start, int End, string Markdown);

/// <summary>Answers about a setup, machine or cutting file, from its schema, however unfinished the file is.</summary>
public static class JobFileAnswers
{
    /// <summary>Members not there yet where a name may stand, the values that a member takes by name, and whole entries of lists.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="offset">Byte offset of the cursor.</param>
    /// <param name="around">What stands beside the file; null for nothing.</param>
    public static JobFileItems Completion(JobFileKind kind, SourceText text, int offset, JobFileSurroundings? around = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        var bytes = text.ToBytes();
        var cursor = JsonCursor.At(bytes, offset);
        var schema = JobSchema.Of(kind);
        if (!(cursor.IsName || cursor.IsValue) || schema.At(cursor.Path) is not { } shape)
            return JobFileItems.None;
        if (cursor.Path.IsEmpty && cursor.IsValue)
            return JsonCursor.IsBlank(bytes) ? new JobFileItems(cursor.Start, cursor.End, [.. Beginning(schema, shape, cursor)]) : JobFileItems.None;
        around ??= JobFileSurroundings.None;
        var items = cursor.IsName
            ? NewMembers(schema, shape, cursor).Select(member => Member(schema, member, cursor)).Concat(Variables(kind, around, cursor))
            : Values(schema, shape, Named(kind, cursor.Path, around), cursor, NextTool(kind, cursor.Path, bytes));
        return new JobFileItems(cursor.Start, cursor.End, [.. items.Select(item => WithCommas(item, cursor))]);
    }

    static IEnumerable<JsonProperty> NewMembers(JobSchema schema, JsonElement shape, JsonCursor cursor) =>
        schema.Members(shape).Where(member => !cursor.Names.Contains(member.Name) && member.Name != "$schema").DistinctBy(member => member.Name);

    /// <summary>A file that has nothing yet: a whole one to change, and each member by itself.</summary>
    static IEnumerable<JobFileItem> Beginning(JobSchema schema, JsonElement shape, JsonCursor cursor) => JobExample.Of(schema, shape).Concat(
        NewMembers(schema, shape, cursor).Select(member => Member(schema, member, cursor)).Select(item => item with { NewText = $"{{ {item.NewText} }}", Snippet = $"{{ {item.Snippet} \\}}" }));

    /// <summary>The variables that programs read and the setup does not give yet.</summary>
    static IEnumerable<JobFileItem> Variables(JobFileKind kind, JobFileSurroundings around, JsonCursor cursor) => kind != JobFileKind.Setup || cursor.Path is not ["variables"] ? []
        : around.Variables().Where(name => !cursor.Names.Contains(name)).Select(name =>
            new JobFileItem(name, cursor.HasColon ? $"\"{name}\"" : $"\"{name}\": ", "Read by a program beside this file; the value that it has when the program starts.", true) { Snippet = cursor.HasColon ? null : $"\"{name}\": $1" });

    /// <summary>With the commas that are missing between what stands there already and what is put in.</summary>
    static JobFileItem WithCommas(JobFileItem item, JsonCursor cursor)
    {
        if (cursor.HasColon)
            return item;
        var behind = cursor.NeedsCommaBehind ? "," : "";
        return item with { NewText = item.NewText + behind, Snippet = item.Snippet is { } snippet ? snippet + behind : null, CommaAt = cursor.CommaAt };
    }

    /// <summary>The number of a tool that is added to a list: one above the greatest in it; null where there is none, and elsewhere.</summary>
    static int? NextTool(JobFileKind kind, ImmutableArray<string> path, byte[] bytes) =>
        kind == JobFileKind.Setup && path is ["tools", JsonCursor.Entry] && ToolNumbers.Greatest(bytes) is > 0 and < ToolNumbers.Most and var greatest ? greatest + 1 : null;

    static IEnumerable<JobFileItem> Values(JobSchema schema, JsonElement shape, IEnumerable<string> names, JsonCursor cursor, int? number)
    {
        foreach (var value in schema.Values(shape).Concat(names.Select(name => $"\"{name}\"")))
            yield return new JobFileItem(value.Trim('"'), value, schema.Meaning(shape), false);
        // Within quotes neither a list nor a whole entry is begun.
        if (cursor.Text.Length > 0 || cursor.End > cursor.Start)
            yield break;
        foreach (var whole in JobExample.Of(schema, shape, number))
            yield return whole;
    }

    /// <summary>What a member means; null where none stands.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="offset">Byte offset of the cursor.</param>
    public static JobFileHover? Hover(JobFileKind kind, SourceText text, int offset)
    {
        ArgumentNullException.ThrowIfNull(text);
        var cursor = JsonCursor.At(text.ToBytes(), offset);
        var schema = JobSchema.Of(kind);
        if (cursor.Text.Length == 0 || !(cursor.IsName || cursor.IsValue)
            || schema.At(cursor.IsName ? cursor.Path.Add(cursor.Text) : cursor.Path) is not { ValueKind: JsonValueKind.Object } shape)
            return null;
        var name = cursor.IsName ? cursor.Text : cursor.Path.LastOrDefault(step => step != JsonCursor.Entry, "");
        var meaning = schema.Meaning(shape);
        return meaning.Length == 0 ? null : new JobFileHover(cursor.Start, cursor.End, $"**{Markdown.Plain(name)}**\n\n{meaning}");
    }

    /// <summary>The file or profile that a setup's machine or a machine's base names; null at any other place.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="offset">Byte offset of the cursor.</param>
    public static (string Name, int Start, int End)? MachineNamed(JobFileKind kind, SourceText text, int offset)
    {
        ArgumentNullException.ThrowIfNull(text);
        var cursor = JsonCursor.At(text.ToBytes(), offset);
        var member = kind == JobFileKind.Setup ? "machine" : "base";
        return cursor.IsValue && cursor.Text.Length > 0 && cursor.Path is [var only] && only == member ? (cursor.Text, cursor.Start, cursor.End) : null;
    }

    /// <summary>All places that name a machine; the quotes are not part of them.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="text">Its text.</param>
    public static IEnumerable<(string Name, int Start, int End)> MachinesNamed(JobFileKind kind, SourceText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var bytes = text.ToBytes();
        var member = kind == JobFileKind.Setup ? "\"machine\""u8.ToArray() : "\"base\""u8.ToArray();
        for (var at = bytes.AsSpan().IndexOf(member); at >= 0;)
        {
            var value = at + member.Length;
            while (value < bytes.Length && bytes[value] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)':')
                value++;
            if (MachineNamed(kind, text, Math.Min(value + 1, bytes.Length)) is var (name, start, end) && start == value)
                yield return (name, start + 1, end - 1);
            var next = bytes.AsSpan(value).IndexOf(member);
            at = next < 0 ? -1 : value + next;
        }
    }

    /// <summary>Names that no schema lists: of the built-in machines, and of what the cutting data have.</summary>
    static IEnumerable<string> Named(JobFileKind kind, ImmutableArray<string> path, JobFileSurroundings around)
    {
        var cutting = around.Cutting;
        var member = path.LastOrDefault(step => step != JsonCursor.Entry);
        return (kind, member) switch
        {
            (JobFileKind.Setup, "machine") or (JobFileKind.Machine, "base") when path.Length == 1 => around.Machines.Concat(MachineProfile.BuiltIns.Select(profile => profile.Name)),
            (JobFileKind.Setup, "thread") => Threads.Coarse.Concat(Threads.InchSeries).Select(thread => thread.Name),
            (JobFileKind.Setup, "material") => path.Length == 1 ? cutting.MaterialNames : cutting.ToolMaterialNames,
            (JobFileKind.Cutting, "material" or "family") => cutting.MaterialNames,
            (JobFileKind.Cutting, "toolMaterial") => cutting.ToolMaterialNames,
            _ => [],
        };
    }

    static JobFileItem Member(JobSchema schema, JsonProperty member, JsonCursor cursor)
    {
        if (cursor.HasColon)
            return new JobFileItem(member.Name, $"\"{member.Name}\"", schema.Meaning(member.Value), true);
        var (before, after) = schema.Brackets(member.Value);
        return new JobFileItem(member.Name, $"\"{member.Name}\": {before}{after}", schema.Meaning(member.Value), true)
        {
            // The value goes where it belongs, whatever follows.
            Snippet = $"\"{member.Name.Replace("$", "\\$", StringComparison.Ordinal)}\": {JobExample.Escaped(before)}$1{JobExample.Escaped(after)}",
        };
    }
}
