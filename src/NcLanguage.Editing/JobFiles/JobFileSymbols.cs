using System.Globalization;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>What a place of a setup file gives to programs: a tool, an offset, a variable.</summary>
public static class JobFileSymbols
{
    /// <summary>What stands at an offset; null where it names nothing that a program does.</summary>
    /// <param name="text">The text of the setup file.</param>
    /// <param name="offset">Byte offset of the cursor.</param>
    /// <param name="setup">What was read from it.</param>
    public static ProgramSymbol? At(SourceText text, int offset, Setup setup)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(setup);
        var cursor = JsonCursor.At(text.ToBytes(), offset);
        return cursor.Path switch
        {
            ["variables"] when cursor.IsName => ProgramSymbol.VariableIn(cursor.Text),
            ["variables", var name] => ProgramSymbol.VariableIn(name),
            ["tools", JsonCursor.Entry, ..] => Tool(cursor, text.LineAt(offset) + 1, setup),
            _ => null,
        };
    }

    /// <summary>Where a program uses it, in the order of the text.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IEnumerable<SymbolUse> UsesIn(SourceText program, ProgramSymbol symbol, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(program);
        return SymbolReader.In(program, cancel).Where(use => use.Symbol == symbol);
    }

    /// <summary>The variables that a program reads, as the setup names them: #100, #&lt;depth&gt;.</summary>
    public static IEnumerable<string> VariablesReadIn(SourceText program)
    {
        ArgumentNullException.ThrowIfNull(program);
        return SymbolReader.In(program).Where(use => use.Role == UseRole.Read && use.Symbol.Kind is NamedKind.Variable or NamedKind.NamedVariable)
            .Select(use => use.Symbol.VariableName).Distinct();
    }

    /// <summary>The tool whose row begins last above the cursor: by its number, or by the offset that the cursor stands on.</summary>
    static ProgramSymbol? Tool(JsonCursor cursor, int line, Setup setup)
    {
        var member = cursor.IsName ? cursor.Text : cursor.Path[^1];
        if (member == "number" && cursor.IsValue && int.TryParse(cursor.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var written))
            return new ProgramSymbol(NamedKind.Tool, written);
        Tool? tool = null;
        foreach (var other in setup.Tools)
            if (other.Line <= line && !(other.Line <= tool?.Line))
                tool = other;
        return (member, tool) switch
        {
            (_, null) => null,
            ("lengthOffset", { LengthOffset: { } number }) => new ProgramSymbol(NamedKind.LengthOffset, number),
            ("radiusOffset", { RadiusOffset: { } number }) => new ProgramSymbol(NamedKind.RadiusOffset, number),
            _ => new ProgramSymbol(NamedKind.Tool, tool.Number),
        };
    }
}
