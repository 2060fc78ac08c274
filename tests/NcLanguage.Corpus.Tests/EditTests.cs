using System.Text;
using CsCheck;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Corpus.Tests;

/// <summary>Random edits of the corpus's programs: what an analysis keeps from before the edit changes nothing in what is found.</summary>
public sealed class EditTests
{
    /// <summary>More than any program of the corpus runs; an edit may make a loop endless.</summary>
    const int MostBlocks = 5000;

    static readonly string[] Lines = [.. CorpusProgram.Names.SelectMany(name => CorpusProgram.Of(name).Text.Split('\n')).Distinct(StringComparer.Ordinal)];

    [Fact]
    public void An_edited_program_is_found_as_a_fresh_one() =>
        Gen.Select(Gen.Int[0, CorpusProgram.Names.Length - 1], Gen.Select(Gen.Double[0, 1], Gen.Int[0, 30], Gen.Int[0, Lines.Length - 1]).Array[1, 4]).Sample((which, edits) =>
        {
            var program = CorpusProgram.Of(CorpusProgram.Names[which]);
            var analysis = program.Analyse(mostBlocks: MostBlocks);
            var text = analysis.Text;
            foreach (var (place, length, line) in edits)
            {
                var from = (int)(place * text.Length);
                text = text.WithChange(from, Math.Min(from + length, text.Length), Encoding.UTF8.GetBytes("\n" + Lines[line] + "\n"));
                analysis = analysis.WithText(text);
                Assert.Equal(program.Analyse(text.ToString(), MostBlocks).Findings.ToList(), analysis.Findings.ToList());
            }
        }, iter: 150);
}
