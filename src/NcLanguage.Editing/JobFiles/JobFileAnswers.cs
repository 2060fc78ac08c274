using System.Text.Json;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>One thing that may be written at the cursor of a setup, machine or cutting file; byte offsets in the text.</summary>
public sealed record JobFileItem(string Label, string NewText, string Meaning, bool IsName);

/// <summary>What may be written, and what it takes the place of.</summary>
public sealed record JobFileItems(int Start, int End, IReadOnlyList<JobFileItem> Items)
{
    public static JobFileItems None { get; } = new(0, 0, []);
}

/// <summary>What stands at a place and what it means.</summary>
public sealed record JobFileHover(int Start, int End, string Markdown);

/// <summary>Answers about a setup, machine or cutting file, from its schema, however unfinished the file is.</summary>
public static class JobFileAnswers
{
    /// <summary>Members not there yet where a name may stand, and the values that a member takes by name.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="offset">Byte offset of the cursor.</param>
    public static JobFileItems Completion(JobFileKind kind, SourceText text, int offset)
    {
        ArgumentNullException.ThrowIfNull(text);
        var cursor = JsonCursor.At(text.ToBytes(), offset);
        var schema = JobSchema.Of(kind);
        if (!(cursor.IsName || cursor.IsValue) || schema.At(cursor.Path) is not { } shape)
            return JobFileItems.None;
        var items = cursor.IsName
            ? schema.Members(shape).Where(member => !cursor.Names.Contains(member.Name) && member.Name != "$schema").DistinctBy(member => member.Name).Select(member => Member(schema, member, cursor))
            : schema.Values(shape).Concat(Profiles(kind, cursor)).Select(value => new JobFileItem(value.Trim('"'), value, schema.Meaning(shape), false));
        return new JobFileItems(cursor.Start, cursor.End, [.. items]);
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

    /// <summary>The built-in machines, where one may be named.</summary>
    static IEnumerable<string> Profiles(JobFileKind kind, JsonCursor cursor) =>
        cursor.Path is [var only] && only == (kind == JobFileKind.Setup ? "machine" : "base") && kind != JobFileKind.Cutting
            ? MachineProfile.BuiltIns.Select(profile => $"\"{profile.Name}\"")
            : [];

    static JobFileItem Member(JobSchema schema, JsonProperty member, JsonCursor cursor)
    {
        var (before, after) = schema.Brackets(member.Value);
        return new JobFileItem(member.Name, cursor.HasColon ? $"\"{member.Name}\"" : $"\"{member.Name}\": {before}{after}", schema.Meaning(member.Value), true);
    }
}
