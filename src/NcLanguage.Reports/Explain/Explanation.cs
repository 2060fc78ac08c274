using System.Collections.Immutable;

namespace NcLanguage.Reports.Explain;

/// <summary>What a name can stand for.</summary>
public enum ExplainedKind { Rule, Code, Address, Statement, Function, Variable, Sign, Reading, Member }

/// <summary>One heading of an explanation and what stands under it.</summary>
/// <param name="IsVerbatim">Lines that must stay as they are: programs, setup files.</param>
/// <param name="Hang">Of lines that are rows of a table, where the last column begins: what does not fit into a line goes on there. 0 for other lines.</param>
public sealed record ExplainedSection(string Heading, string Text, bool IsVerbatim = false, int Hang = 0);

/// <summary>Everything that is said about one rule, code, address, statement, function, variable, sign, reading or member of a file.</summary>
/// <param name="Name">As the user writes it.</param>
/// <param name="Title">In one line.</param>
/// <param name="Group">The group it is listed in.</param>
/// <param name="Page">The name of its page in the reference, without an ending; no other has it in any case of letters.</param>
public sealed record Explanation(
    ExplainedKind Kind, string Name, string Title, string Group, string Page, ImmutableArray<ExplainedSection> Sections)
{
    /// <summary>Another name for it, such as a rule's number; null where there is none.</summary>
    public string? Alias { get; init; }

    /// <summary>Names it is found by where nothing is called so: the signs of a pair, the members of a member.</summary>
    public ImmutableArray<string> AlsoFoundBy { get; init; } = [];

    /// <summary>Names of others to read with it, as they are called.</summary>
    public ImmutableArray<string> SeeAlso { get; init; } = [];

    /// <summary>The kind as one lower-case word.</summary>
    public string KindWord => Kind switch
    {
        ExplainedKind.Rule => "rule",
        ExplainedKind.Code => "code",
        ExplainedKind.Address => "address",
        ExplainedKind.Statement => "statement",
        ExplainedKind.Function => "function",
        ExplainedKind.Variable => "variable",
        ExplainedKind.Sign => "sign",
        ExplainedKind.Reading => "reading",
        _ => "member",
    };
}
