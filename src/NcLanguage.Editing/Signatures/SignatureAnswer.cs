using System.Collections.Immutable;

namespace NcLanguage.Editing;

/// <summary>One word of a signature.</summary>
/// <param name="Start">Where it stands in the label, in characters.</param>
/// <param name="End">The end, excluded.</param>
/// <param name="Text">What it says, with its unit and how it stands in the block.</param>
public sealed record SignatureWord(int Start, int End, string Text);

/// <summary>One code or call with its words.</summary>
/// <param name="Label">The code and its words as they stand: those given as written, those carried over in brackets, those missing with ….</param>
/// <param name="Documentation">Markdown: what the code does, what is still missing, what is carried over.</param>
/// <param name="ActiveWord">Index of the word at the cursor, or else of the next one that is needed.</param>
public sealed record SignatureLine(string Label, string Documentation, ImmutableArray<SignatureWord> Words, int ActiveWord);

/// <summary>The codes of a block that take words, and which of them the cursor's word belongs to.</summary>
public sealed record SignatureAnswer(ImmutableArray<SignatureLine> Lines, int Active);
