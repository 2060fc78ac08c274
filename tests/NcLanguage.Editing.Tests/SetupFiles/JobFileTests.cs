using System.Text;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Loading;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.SetupFiles;

/// <summary>Setup and machine files while they are written. What may stand where: the schemas.</summary>
public sealed class JobFileTests
{
    static (SourceText Text, int Offset) Cut(string marked)
    {
        var at = marked.IndexOf(Editor.Cursor, StringComparison.Ordinal);
        return (SourceText.From(marked.Remove(at, Editor.Cursor.Length)), Encoding.UTF8.GetByteCount(marked[..at]));
    }

    static string[] Items(string marked, JobFileKind kind = JobFileKind.Setup)
    {
        var (text, offset) = Cut(marked);
        return [.. JobFileAnswers.Completion(kind, text, offset).Items.Select(item => item.Label)];
    }

    static string Accepted(string marked, string label, JobFileKind kind = JobFileKind.Setup)
    {
        var (text, offset) = Cut(marked);
        var items = JobFileAnswers.Completion(kind, text, offset);
        var item = items.Items.Single(one => one.Label == label);
        var changed = text.WithChange(items.Start, items.End, Encoding.UTF8.GetBytes(item.NewText));
        // What is put in before leaves the offset of what stands earlier.
        return (item.CommaAt < 0 ? changed : changed.WithChange(item.CommaAt, item.CommaAt, ","u8.ToArray())).ToString();
    }

    [Theory]
    [InlineData("{ $0 }")]
    [InlineData("{ \"$0\" }")]
    [InlineData("{ $0")]
    [InlineData("{ \"stock\": { \"min\": [0, 0, 0], \"max\": [1, 1, 1] }, $0")]
    public void Members_where_a_name_may_stand(string marked)
    {
        var items = Items(marked);
        Assert.Contains("clearance", items);
        Assert.Contains("tools", items);
        Assert.Equal(marked.Contains("stock", StringComparison.Ordinal), !items.Contains("stock"));
    }

    /// <summary>A tool that is added gets a number that none has, also where the list is not finished; the first keeps that of the example.</summary>
    [Theory]
    [InlineData("{ \"tools\": [ $0 ] }", "\"number\": 4,", "\"radiusOffset\": 4 }")]
    [InlineData("{ \"tools\": [ { \"number\": 7 }, { \"number\": 3 }, $0 ] }", "\"number\": 8,", "\"radiusOffset\": 8 }")]
    [InlineData("{ // note\n \"tools\": [ { \"number\": 12, \"diameter\": 10 }, $0", "\"number\": 13,", "\"radiusOffset\": 13 }")]
    [InlineData("{ \"tools\": [ { \"number\": 99999 }, $0 ] }", "\"number\": 4,", "\"radiusOffset\": 4 }")]
    public void A_tool_that_is_added_gets_the_next_number(string marked, string number, string offset)
    {
        var written = Accepted(marked, "{ … } end-mill");
        Assert.Contains(number, written, StringComparison.Ordinal);
        Assert.Contains(offset, written, StringComparison.Ordinal);
    }

    [Fact]
    public void Members_that_stand_behind_the_cursor_are_left_out_too() =>
        Assert.DoesNotContain("clearance", Items("{ $0, \"clearance\": 2 }"));

    [Theory]
    [InlineData("{ \"tools\": [ { \"number\": 1, \"kind\": $0 } ] }")]
    [InlineData("{ \"tools\": [ { \"kind\": \"$0\" } ] }")]
    [InlineData("{ \"tools\": [ { \"number\": 1 }, { \"kind\": \"dr$0")]
    [InlineData("{ // a note with \" and { in it\n \"tools\": [ /* { */ { \"kind\": \"$0\" } ] }")]
    public void Values_that_have_names(string marked)
    {
        var items = Items(marked);
        Assert.Contains("spot-drill", items);
        Assert.Contains("face-mill", items);
    }

    [Theory]
    [InlineData("{ // $0\n }")]
    [InlineData("{ \"clearance\": $0 }")]
    [InlineData("{ } $0")]
    [InlineData("{ \"tools\": [ 3$0 ] }")]
    [InlineData("{ \"no such\": { $0 } }")]
    [InlineData("[ $0 ]")]
    public void Nothing_where_nothing_fits(string marked) => Assert.Empty(Items(marked));

    [Theory]
    [InlineData("{ $0 }", "units", "{ \"units\": \"\" }")]
    [InlineData("{ \"cl$0\" }", "clearance", "{ \"clearance\":  }")]
    [InlineData("{ \"cl$0\": 2 }", "clearance", "{ \"clearance\": 2 }")]
    [InlineData("{ $0 }", "obstacles", "{ \"obstacles\": [] }")]
    [InlineData("{ \"units\": \"i$0\" }", "inch", "{ \"units\": \"inch\" }")]
    public void What_is_taken_is_valid_as_far_as_it_goes(string marked, string label, string expected) => Assert.Equal(expected, Accepted(marked, label));

    [Fact]
    public void A_hollow_of_the_stock_is_offered_whole_and_by_its_members()
    {
        const string Stock = "{ \"stock\": { \"min\": [0, 0, -20], \"max\": [100, 60, 0], ";
        Assert.Contains("hollows", Items(Stock + "$0 } }"));
        Assert.Equal(["bottom", "center", "cornerRadius", "diameter", "max", "min", "name"], Items(Stock + "\"hollows\": [ { $0 } ] } }").Order(StringComparer.Ordinal));
        var (text, offset) = Cut(Stock + "\"hollows\": [ { \"bot$0tom\": -4 } ] } }");
        Assert.Contains("Without it: it goes through.", JobFileAnswers.Hover(JobFileKind.Setup, text, offset)!.Markdown, StringComparison.Ordinal);
        Assert.Contains("G59.3", Items("{ \"frame\": \"$0\" }"));
    }

    /// <summary>RFC 8259: a comma between two members or entries, wherever the new one is put.</summary>
    [Theory]
    [InlineData("{ \"units\": \"mm\" $0 }", "clearance", "{ \"units\": \"mm\", \"clearance\":  }")]
    [InlineData("{ \"units\": \"mm\"\n  \"cl$0\"\n}", "clearance", "{ \"units\": \"mm\",\n  \"clearance\": \n}")]
    [InlineData("{ \"units\": \"mm\", // the unit\n  $0\n  \"tools\": [] }", "clearance", "{ \"units\": \"mm\", // the unit\n  \"clearance\": ,\n  \"tools\": [] }")]
    [InlineData("{ \"units\": \"mm\" // the unit\n  $0\n  \"tools\": [] }", "clearance", "{ \"units\": \"mm\", // the unit\n  \"clearance\": ,\n  \"tools\": [] }")]
    [InlineData("{ $0 \"tools\": [] }", "units", "{ \"units\": \"\", \"tools\": [] }")]
    [InlineData("{ \"tools\": [] $0, \"units\": \"mm\" }", "clearance", "{ \"tools\": [], \"clearance\": , \"units\": \"mm\" }")]
    [InlineData("{ \"units\": $0\n \"tools\": [] }", "inch", "{ \"units\": \"inch\",\n \"tools\": [] }")]
    [InlineData("{ \"units\": \"$0\", \"tools\": [] }", "inch", "{ \"units\": \"inch\", \"tools\": [] }")]
    [InlineData("{ \"clea$0\": 2 }", "clearance", "{ \"clearance\": 2 }")]
    public void Commas_are_put_right(string marked, string label, string expected) => Assert.Equal(expected, Accepted(marked, label).Replace(" ,\"", ",\"", StringComparison.Ordinal));

    [Fact]
    public void An_entry_of_a_list_gets_its_commas_too()
    {
        var (text, offset) = Cut("{ \"tools\": [ { \"number\": 1 } $0 { \"number\": 2 } ] }");
        var item = JobFileAnswers.Completion(JobFileKind.Setup, text, offset).Items[0];
        Assert.Equal((text.ToString().IndexOf('}', StringComparison.Ordinal) + 1, ','), (item.CommaAt, item.NewText[^1]));
    }

    [Fact]
    public void What_lies_beside_is_offered()
    {
        var around = JobFileSurroundings.None with { Machines = ["shop.machine.json"], Variables = () => ["#100", "#<depth>"] };
        string[] Beside(string marked)
        {
            var (text, offset) = Cut(marked);
            return [.. JobFileAnswers.Completion(JobFileKind.Setup, text, offset, around).Items.Select(item => item.NewText)];
        }
        Assert.Equal("\"shop.machine.json\"", Beside("{ \"machine\": $0 }")[0]);
        Assert.Contains("\"iso-mill\"", Beside("{ \"machine\": $0 }"));
        Assert.Equal(["\"#100\": ", "\"#<depth>\": "], Beside("{ \"variables\": { $0 } }"));
        Assert.Equal(["\"#<depth>\": "], Beside("{ \"variables\": { \"#100\": 2, $0 } }"));
        Assert.Equal(["#<depth>", "#100"], JobFileSymbols.VariablesReadIn(SourceText.From("#101=#<Depth>\nX#100\nZ#100")));
    }

    /// <summary>Sizes of ISO 261 and of the unified series.</summary>
    [Fact]
    public void The_thread_of_a_hole_is_completed()
    {
        var items = Items("{ \"holes\": [ { \"x\": 0, \"y\": 0, \"thread\": \"$0\" } ] }");
        Assert.Contains("M8", items);
        Assert.Contains("1/4-20", items);
    }

    /// <summary>Materials are those that the cutting data have: the setup's of the work, a tool's of its edges.</summary>
    [Fact]
    public void Materials_are_those_of_the_cutting_data()
    {
        Assert.Equal(CuttingTable.BuiltIn.MaterialNames, Items("{ \"material\": \"$0\" }"));
        Assert.Equal(CuttingTable.BuiltIn.ToolMaterialNames, Items("{ \"tools\": [ { \"material\": $0 } ] }"));
        Assert.Equal(CuttingTable.BuiltIn.MaterialNames, Items("{ \"rows\": [ { \"material\": [\"$0\"] } ] }", JobFileKind.Cutting));
        Assert.Equal("{ \"material\": \"aluminium\" }", Accepted("{ \"material\": \"al$0\" }", "aluminium"));
        var own = new CuttingTable([new("oak", [], null)], [], CuttingTable.BuiltIn);
        var (text, offset) = Cut("{ \"material\": $0 }");
        Assert.Equal("\"oak\"", JobFileAnswers.Completion(JobFileKind.Setup, text, offset, JobFileSurroundings.None with { Cutting = own }).Items[0].NewText);
    }

    /// <summary>What is put in whole is read without a mistake, the places to fill in left as they are.</summary>
    [Theory]
    [InlineData("$0")]
    [InlineData("// the plate\n$0\n")]
    [InlineData("{ \"tools\": [ $0 ] }")]
    [InlineData("{ \"tools\": [ { \"number\": 9 }, $0 ] }")]
    [InlineData("{ \"obstacles\": [ $0 ] }")]
    [InlineData("{ \"holes\": [ $0")]
    [InlineData("{ \"stock\": $0 }")]
    [InlineData("{ \"stock\": { \"min\": [0, 0, -20], \"max\": [100, 60, 0], \"hollows\": [ $0 ] } }")]
    [InlineData("{ \"workOffsets\": { \"G54\": $0 } }")]
    [InlineData("{ \"variables\": $0 }")]
    public void Whole_entries_can_be_read(string marked)
    {
        var (text, offset) = Cut(marked);
        var items = JobFileAnswers.Completion(JobFileKind.Setup, text, offset);
        Assert.NotEmpty(items.Items);
        foreach (var item in items.Items.Where(item => item.Snippet is not null && !item.IsName))
        {
            var closed = marked.EndsWith('0') && marked[0] == '{' ? "] }" : "";
            var filled = text.WithChange(items.Start, items.End, Encoding.UTF8.GetBytes(item.NewText)).ToString() + closed;
            Assert.Empty(SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(filled)).Problems);
            Assert.Equal(item.NewText, Typist.Filled(item.Snippet!.Replace("$1", "", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void An_empty_file_can_be_begun_with_any_member() => Assert.Equal("{ \"units\": \"\" }", Accepted("$0", "units"));

    [Fact]
    public void Readings_of_a_machine_by_name()
    {
        Assert.Contains("dwell", Items("{ \"readings\": { $0 } }", JobFileKind.Machine));
        Assert.Contains("milliseconds", Items("{ \"readings\": { \"dwell\": \"$0\" } }", JobFileKind.Machine));
        Assert.Equal(["true", "false"], Items("{ \"readings\": { \"rapidsEndCycle\": $0 } }", JobFileKind.Machine));
    }

    [Theory]
    [InlineData("{ \"clear$0ance\": 2 }", "**clearance**\n\nThe least distance that counts as clear.")]
    [InlineData("{ \"tools\": [ { \"pitch\": 1.$025 } ] }", "**pitch**\n\n")]
    public void A_member_or_its_value_tells_what_it_means(string marked, string expected)
    {
        var (text, offset) = Cut(marked);
        Assert.StartsWith(expected, JobFileAnswers.Hover(JobFileKind.Setup, text, offset)!.Markdown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ $0 }")]
    [InlineData("{ \"no su$0ch\": 1 }")]
    [InlineData("{ /* cle$0arance */ }")]
    public void Nothing_is_told_of_what_is_not_known(string marked)
    {
        var (text, offset) = Cut(marked);
        Assert.Null(JobFileAnswers.Hover(JobFileKind.Setup, text, offset));
    }

    [Fact]
    public void The_machine_that_is_named()
    {
        var (text, offset) = Cut("{ \"machine\": \"shop.$0machine.json\" }");
        Assert.Equal("shop.machine.json", JobFileAnswers.MachineNamed(JobFileKind.Setup, text, offset)!.Value.Name);
        (text, offset) = Cut("{ \"machine\": \"shop\\/M\\u00fch$0le.machine.json\" }");
        Assert.Equal("shop/Mühle.machine.json", JobFileAnswers.MachineNamed(JobFileKind.Setup, text, offset)!.Value.Name);
        (text, offset) = Cut("{ \"material\": \"alu$0minium\" }");
        Assert.Null(JobFileAnswers.MachineNamed(JobFileKind.Setup, text, offset));
    }

    const string Tools = "{ \"tools\": [\n  { \"number\": 4, \"lengthOffset\": 14 },\n  { \"kind\": \"tap\", \"number\": 6, \"radiusOffset\": 26 }\n ],\n \"variables\": { \"#100\": 3, \"#<Depth>\": 2 } }";

    [Theory]
    [InlineData("\"number\": 4", 11, NamedKind.Tool, 4)]
    [InlineData("\"number\": 4", 2, NamedKind.Tool, 4)]
    [InlineData("\"lengthOffset\": 14", 3, NamedKind.LengthOffset, 14)]
    [InlineData("\"tap\"", 2, NamedKind.Tool, 6)]
    [InlineData("\"radiusOffset\": 26", 17, NamedKind.RadiusOffset, 26)]
    [InlineData("\"#100\": 3", 3, NamedKind.Variable, 100)]
    [InlineData("\"#100\": 3", 8, NamedKind.Variable, 100)]
    public void What_a_setup_gives_is_known_in_programs(string there, int along, NamedKind kind, int number)
    {
        var text = SourceText.From(Tools);
        var symbol = JobFileSymbols.At(text, Tools.IndexOf(there, StringComparison.Ordinal) + along, Editor.Setup(Tools));
        Assert.Equal(new ProgramSymbol(kind, number), symbol);
    }

    [Fact]
    public void The_uses_of_a_variable_with_a_name()
    {
        var symbol = JobFileSymbols.At(SourceText.From(Tools), Tools.IndexOf("#<Depth>", StringComparison.Ordinal) + 3, Editor.Setup(Tools));
        var use = Assert.Single(JobFileSymbols.UsesIn(SourceText.From("G0 X1\nG1 Z-#<depth> F1"), symbol!.Value, default));
        Assert.Equal((1, 7, 12), (use.Line, use.Start, use.End));
        Assert.Null(JobFileSymbols.At(SourceText.From(Tools), 1, Editor.Setup(Tools)));
    }

    [Fact]
    public void The_machines_named_are_links()
    {
        Assert.Equal([("shop.machine.json", 13, 30)], JobFileAnswers.MachinesNamed(JobFileKind.Setup, SourceText.From("{ \"machine\": \"shop.machine.json\", \"material\": \"machine\" }")).Select(link => (link.Name, link.Start - 1, link.End - 1)));
        Assert.Empty(JobFileAnswers.MachinesNamed(JobFileKind.Machine, SourceText.From("{ \"name\": \"base\", \"base\"")));
    }

    /// <summary>Any text at any cursor: an answer, never an exception, and its range lies in the text.</summary>
    [Fact]
    public void Any_text_is_taken()
    {
        var random = new Random(20261127);
        const string Signs = "{}[]\",:/*\\ \n0123kindtools";
        for (var run = 0; run < 2000; run++)
        {
            var text = SourceText.From(string.Concat(Enumerable.Range(0, random.Next(40)).Select(_ => Signs[random.Next(Signs.Length)])));
            var offset = random.Next(text.Length + 1);
            var items = JobFileAnswers.Completion(JobFileKind.Setup, text, offset);
            Assert.InRange(items.Start, 0, items.End);
            Assert.InRange(items.End, items.Start, text.Length);
            _ = JobFileAnswers.Hover(JobFileKind.Machine, text, offset);
        }
    }
}
