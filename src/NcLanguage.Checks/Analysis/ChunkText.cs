using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What a chunk's text alone tells, whatever the state it is met with. Immutable; reused for as long as the chunk stays.</summary>
public sealed class ChunkText
{
    public required Chunk Chunk { get; init; }

    /// <summary>Findings of the rules on text, with lines counted within the chunk.</summary>
    public required Finding[] Findings { get; init; }

    /// <summary>Its block numbers, and what in it may lead the run elsewhere.</summary>
    public required ChunkMarks Marks { get; init; }

    public BlockNumber[] Numbers => Marks.Numbers;

    /// <summary>Least and greatest of <see cref="Numbers"/>, and whether each is greater than the one before.</summary>
    public required NumberRange NumberRange { get; init; }

    /// <summary>The words of its blocks that could be plain moves, for runs to come; null where they are not kept or there is none.</summary>
    public required PlainBlocks? Words { get; init; }

    /// <summary>Whether a comment in it asks for silence.</summary>
    public required bool HasAllow { get; init; }

    /// <summary>Whether a block in it can be skipped.</summary>
    public required bool HasSkip { get; init; }

    /// <summary>Its findings with the lines of the whole text.</summary>
    internal Finding[] FindingsAt(int firstLine) => PlacedFindings.Of(Findings, firstLine, "", ref _placed);

    PlacedFindings? _placed;

    internal static ChunkText Of(Chunk chunk, BlockList blocks, Job job, Rule[] textRules, PlainBlocks.Reader? words)
    {
        var findings = new List<Finding>(0);
        var hasSkip = false;
        HashSet<Rule>? failed = null;
        for (var line = 0; line < blocks.Count; line++)
        {
            var block = blocks[line];
            hasSkip |= block.IsSkippable;
            foreach (var rule in textRules)
            {
                if (failed is not null && failed.Contains(rule))
                    continue;
                try
                {
                    rule.CheckText(new BlockContext(job, findings, block, line));
                }
                catch (Exception e) when (RuleFault.IsFault(e))
                {
                    (failed ??= []).Add(rule);
                    findings.Add(RuleFault.AtBlock(rule, line, StepContext.WordsOf(block), e));
                }
            }
        }
        var marks = ChunkMarks.Of(blocks);
        return new ChunkText
        {
            Chunk = chunk,
            Findings = findings.Count == 0 ? [] : [.. findings],
            Marks = marks,
            Words = words?.Read(blocks),
            NumberRange = NumberRange.Of(marks.Numbers),
            HasAllow = AllowComments.MayStandIn(chunk.Bytes),
            HasSkip = hasSkip,
        };
    }
}
