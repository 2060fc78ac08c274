using System.Collections.Immutable;

namespace NcLanguage.Editing;

/// <summary>What kind of thing is offered.</summary>
public enum CompletionKind { Code, Cycle, Word, Value, Lines, Variable, Function, Operator, Statement, BlockNumber, Program, Rule }

/// <summary>One thing to put in at the cursor.</summary>
/// <param name="Label">What the list shows.</param>
/// <param name="Detail">One line beside it.</param>
/// <param name="NewText">What is put in place of the range of the answer.</param>
public sealed record CompletionEntry(string Label, CompletionKind Kind, string Detail, string NewText)
{
    /// <summary>What an editor compares with the text typed; the label where null. Values that say more than one word have their letter
    /// alone, so that nobody who types a number of his own and ends the line gets one of these.</summary>
    public string? FilterText { get; init; }

    /// <summary>Whether <see cref="NewText"/> has the places to fill in as LSP writes them.</summary>
    public bool IsSnippet { get; init; }

    /// <summary>Markdown that is ready; null where <see cref="Topic"/> leads to it, or there is none.</summary>
    public string? Documentation { get; init; }

    /// <summary>What <see cref="CompletionTopics"/> has the documentation of; null where it is ready, or there is none.</summary>
    public string? Topic { get; init; }
}

/// <summary>What can be put in at a place, best first. Line and byte columns count from 0.</summary>
/// <param name="StartColumn">Where the text begins that is replaced; it holds the cursor and lies in one line.</param>
/// <param name="EndColumn">Where it ends, the end excluded.</param>
/// <param name="IsIncomplete">Whether there is more than is shown: ask again when more is typed.</param>
public sealed record CompletionAnswer(ImmutableArray<CompletionEntry> Entries, int Line, int StartColumn, int EndColumn, bool IsIncomplete)
{
    /// <summary>Nothing to offer at a place.</summary>
    public static CompletionAnswer None(int line, int column) => new([], line, column, column, false);
}
