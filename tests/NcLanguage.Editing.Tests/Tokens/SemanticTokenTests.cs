using System.Text;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Tokens;

/// <summary>The colours of a program.</summary>
public sealed class SemanticTokenTests
{
    static string Of(string program, int first = 0, int last = int.MaxValue)
    {
        var analysis = Editor.Analyse(program);
        return string.Join(' ', SemanticTokens.In(analysis, first, last).Select(token =>
            $"{Encoding.UTF8.GetString(analysis.Text.Line(token.Line)[token.Start..token.End])}:{token.Type}{(token.Modifiers == 0 ? "" : "/" + token.Modifiers.ToString().Replace(", ", "+", StringComparison.Ordinal))}"));
    }

    [Theory]
    [InlineData("N10 G0 X1.5", "N10:Label/Definition G0:Keyword/Rapid X:Parameter/Rapid 1.5:Number/Rapid")]
    [InlineData("G90 G1 X5 F100", "G90:Keyword/Cut G1:Keyword/Cut X:Parameter/Cut 5:Number/Cut F:Property 100:Number")]
    [InlineData("G81 X1 Y2 Z-3 R2 F50", "G81:Function/Cut X:Parameter/Cut 1:Number/Cut Y:Parameter/Cut 2:Number/Cut Z:Parameter/Cut -3:Number/Cut R:Parameter/Cut 2:Number/Cut F:Property 50:Number")]
    [InlineData("(NC-ALLOW r-far: why) M5 ; end", "(NC-ALLOW r-far: why):Comment/Documentation M5:Property ; end:Comment")]
    [InlineData("#100=[#<a b>*SIN[30]+2]", "#100:Variable/Modification =:Operator #<a b>:Variable *:Operator SIN:Function 30:Number +:Operator 2:Number")]
    [InlineData("IF [#1 EQ 2] GOTO 10\nN10", "IF:Keyword #1:Variable EQ:Operator 2:Number GOTO:Keyword 10:Label N10:Label/Definition")]
    [InlineData("T4 M6 D4 H4", "T:Property 4:Number M6:Property D:Property 4:Number H:Property 4:Number")]
    [InlineData("%\n/2 O7 (PLATE)", "%:Operator /2:Operator O7:Function/Definition (PLATE):Comment")]
    [InlineData("O7 SUB\nO7 ENDSUB\nO7 CALL [5]\nM2", "O7:Function SUB:Keyword O7:Function ENDSUB:Keyword O7:Function CALL:Keyword 5:Number M2:Property")]
    public void Each_part_by_what_it_is_and_does(string program, string expected) => Assert.Equal(expected, Of(program));

    [Fact]
    public void Blocks_that_the_run_never_comes_to_are_marked() =>
        Assert.Equal("GOTO:Keyword 10:Label G0:Keyword/NotRun X:Parameter/NotRun 1:Number/NotRun N10:Label/Definition M30:Property", Of("GOTO 10\nG0 X1\nN10 M30"));

    [Fact]
    public void Some_lines_have_the_tokens_that_all_lines_have()
    {
        const string Program = "G90 G54\nT4 M6\nG0 X0 Y0\nG81 X1 Y1 Z-2 R1 F90\nX5\nG80\nM30";
        Assert.Equal(Of(Program), string.Join(' ', Enumerable.Range(0, 7).Select(line => Of(Program, line, line))));
    }

    /// <summary>Any bytes at all: tokens lie in order within their lines and do not meet.</summary>
    [Fact]
    public void Tokens_of_any_bytes_lie_in_order()
    {
        var random = new Random(20261127);
        const string Signs = "GMNOXYZ#<>[]()=+-*/.;%: 0123456789IFTHENGOTO\n";
        for (var run = 0; run < 400; run++)
        {
            var program = string.Concat(Enumerable.Range(0, 60).Select(_ => Signs[random.Next(Signs.Length)]));
            var analysis = Editor.Analyse(program);
            var (line, end) = (-1, 0);
            foreach (var token in SemanticTokens.In(analysis, 0, int.MaxValue))
            {
                Assert.True(token.Line > line || (token.Line == line && token.Start >= end), program);
                Assert.True(token.End > token.Start && token.End <= analysis.Text.Line(token.Line).Length, program);
                (line, end) = (token.Line, token.End);
            }
        }
    }
}
