using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.MotionView;

namespace NcLanguage.Reports.Tests.MotionView;

/// <summary>The page as a file: what it lets in, and whether it can be read.</summary>
public sealed partial class MotionPageTests
{
    const string Hostile = "G21 G90 G54\n(</script><script>alert(1)</script><!-- <img src=x onerror=alert(2)>)\nG0 X1 Y2 Z3\nM30\n";

    [Fact]
    public void What_the_program_says_stays_text()
    {
        var page = Example.Of(Hostile).Page();
        // One element of data, one script; nothing that the program wrote begins or ends either.
        Assert.Equal(2, Regex.Count(page, "<script"));
        Assert.Equal(2, Regex.Count(page, "</script"));
        Assert.DoesNotContain("alert(1)<", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        var text = Example.Of(Hostile).PageData().GetProperty("steps").GetProperty("text").EnumerateArray().Select(one => one.GetString()!).ToList();
        Assert.All(text, block => Assert.DoesNotContain("\u003C/script", block.Replace("</script", "", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    /// <summary>A T-slot, and a bore widened from below: what a picture of heights cannot hold is said beside it.</summary>
    [Fact]
    public void Undercuts_are_told_beside_the_picture()
    {
        var setup = Example.Plate with
        {
            Stock = new Box3(new Point3(0, 0, -30), new Point3(100, 60, 0)),
            Obstacles = [],
            Tools =
            [
                new Tool { Number = 1, Kind = ToolKind.SlotMill, Diameter = 21, ShankDiameter = 10, FluteLength = 9, Length = 95 },
                new Tool { Number = 2, Kind = ToolKind.BoringBar, Diameter = 30, Length = 95 },
            ],
        };
        var notes = Notes("G21 G90 G17 G54\nT1 M6\nS800 M3\nG0 X-15 Y10 Z40\nZ-20\nG1 X115 F60\nG0 Z50\nT2 M6\nS500 M3\nG98 G87 X50 Y40 Z-20 R-35 Q4 F40\nG80\nM30\n");
        Assert.Single(notes, "In what is left of the stock, what stands above the flutes of T1 is drawn as cut away: undercuts are not held.");
        Assert.Single(notes, "In what is left of the stock, what T2 takes from below is drawn as still there: undercuts are not held.");
        Assert.DoesNotContain(Notes("G21 G90 G17 G54\nT1 M6\nS800 M3\nG0 X-15 Y10 Z40\nZ-8\nG1 X115 F60\nG0 Z50\nM30\n"), note => note.Contains("undercuts", StringComparison.Ordinal));

        // A shank that is not given may be as thick as the flutes, or thinner.
        setup = setup with { Tools = [setup.Tools[0] with { ShankDiameter = null }, setup.Tools[1]] };
        Assert.Single(Notes("G21 G90 G17 G54\nT1 M6\nS800 M3\nG0 X-15 Y10 Z40\nZ-20\nG1 X115 F60\nG0 Z50\nM30\n"), "In what is left of the stock, what stands above the flutes of T1 is drawn as cut away: undercuts are not held.");
        Assert.DoesNotContain(Notes("G21 G90 G17 G54\nT1 M6\nS800 M3\nG0 X-15 Y10 Z40\nZ-8\nG1 X115 F60\nG0 Z50\nM30\n"), note => note.Contains("undercuts", StringComparison.Ordinal));

        List<string> Notes(string program) => [.. Example.Of(program, setup).PageData().GetProperty("notes").EnumerateArray().Select(note => note.GetString()!)];
    }

    [Fact]
    public void A_name_of_a_clamp_or_file_stays_text_too()
    {
        const string Name = "<b>\"&'</script>";
        var setup = Example.Plate with { Obstacles = [((BoxObstacle)Example.Plate.Obstacles[0]) with { Name = Name }] };
        var example = Example.Of("G21 G90 G54 T1 M6\nG0 X50 Y10 Z5\nG0 X0\nM30\n", setup);
        Assert.Equal(2, Regex.Count(example.Page(), "</script"));
        Assert.Equal(Name, example.PageData().GetProperty("obstacles")[0].GetProperty("name").GetString());
        Assert.DoesNotContain("<b>", MotionDrawing.Of(example.Recording), StringComparison.Ordinal);
    }

    /// <summary>Content Security Policy level 3: a hash is that of the text between the tags; nothing else may run, and nothing be fetched.</summary>
    [Fact]
    public void Only_the_pages_own_script_and_style_may_be_used_and_nothing_fetched()
    {
        var page = Example.Of(Hostile).Page();
        var policy = Policy().Match(page).Groups[1].Value;
        Assert.StartsWith("default-src 'none'; ", policy, StringComparison.Ordinal);
        Assert.Contains($"script-src 'sha256-{Hash(Script().Match(page).Groups[1].Value)}'", policy, StringComparison.Ordinal);
        Assert.Contains($"style-src 'sha256-{Hash(StyleElement().Match(page).Groups[1].Value)}'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Empty(Fetches().Matches(Example.Of("").Page()));
        // Handlers and styles in attributes would not be let through.
        Assert.DoesNotMatch(@"<[a-z][^>]*\s(style|on[a-z]+)=", page[..page.IndexOf("<script", StringComparison.Ordinal)]);
    }

    [Fact]
    public void Inside_an_editor_its_nonce_takes_the_place_of_the_hashes()
    {
        var page = Example.Of(Hostile).Page("abc\"123");
        Assert.Contains("script-src 'nonce-abc&quot;123'", page, StringComparison.Ordinal);
        Assert.Contains("<style nonce=\"abc&quot;123\">", page, StringComparison.Ordinal);
        Assert.Contains("<script nonce=\"abc&quot;123\">", page, StringComparison.Ordinal);
        Assert.DoesNotContain("sha256-", page, StringComparison.Ordinal);
    }

    /// <summary>ISO 5456-2 (from memory): the symbol of the projection has a cone and the two circles that it is seen as.</summary>
    [Fact]
    public void The_page_bears_the_symbol_of_its_projection()
    {
        var symbol = Regex.Match(Example.Of(Hostile).Page(), "<svg[^>]*aria-label=\"First-angle projection\".*?</svg>", RegexOptions.Singleline).Value;
        Assert.Equal(2, Regex.Count(symbol, "<circle"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("%\n%\n")]
    [InlineData("(only a comment)\n")]
    [InlineData("G0 X1\n")]
    [InlineData("G21 G90 G55\nG0 X1 Y1 Z1\nG54\nX2\n")]
    [InlineData("G20 G90 G54\nG0 X1 Y1 Z1\nM30\n")]
    [InlineData("G21 G90 G54\nG38.2 Z-5 F10\nG0 X#999\nM30\n")]
    public void Every_program_gives_a_page_and_a_drawing(string text)
    {
        var example = Example.Of(text);
        Assert.Equal(example.Trace().GetProperty("steps").GetArrayLength(), example.PageData().GetProperty("steps").GetProperty("count").GetInt32());
        var drawing = MotionDrawing.Of(example.Recording);
        Assert.Equal("svg", System.Xml.Linq.XDocument.Parse(drawing).Root!.Name.LocalName);
        Assert.DoesNotMatch(@"NaN|Infinity|∞", drawing);
    }

    /// <summary>WCAG 2.1, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (graphics, 3 to 1), by day, by night, as chosen and on paper.</summary>
    [Fact]
    public void All_colours_can_be_told_from_their_ground()
    {
        var schemes = Schemes().Matches(MotionPage.Style);
        Assert.Equal(5, schemes.Count);
        foreach (Match scheme in schemes)
        {
            var colours = Colours().Matches(scheme.Value).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);
            Assert.All(new[] { "ink", "faint", "accent", "contact-text" }, text =>
                Assert.All(new[] { "ground", "box" }, ground => AssertContrast(colours, text, ground, 4.5)));
            // Words of the drawing stand on the stock too.
            AssertContrast(colours, "ink", "stock", 4.5);
            AssertContrast(colours, "ink", "cut", 4.5);
            AssertContrast(colours, "on-accent", "accent", 4.5);
            Assert.All(new[] { "line", "rapid", "feed", "contact", "clamp", "support", "tool-edge", "ink" }, line =>
            {
                AssertContrast(colours, line, "ground", 3);
                if (line != "line")
                    AssertContrast(colours, line, "stock", 3);
                // A contact has a rim in the colour of the ground.
                if (line is not ("line" or "contact"))
                    AssertContrast(colours, line, "cut", 3);
            });
            // What is still to come is drawn through: what is seen is a mixture.
            var ahead = double.Parse(Ahead().Match(scheme.Value).Groups[1].Value, CultureInfo.InvariantCulture);
            foreach (var line in new[] { "rapid", "feed" })
                foreach (var ground in new[] { "ground", "stock", "cut" })
                {
                    colours["mixed"] = Wcag.Over(colours[line], colours[ground], ahead);
                    AssertContrast(colours, "mixed", ground, 3);
                }
        }
        // Every colour has a name, so that none escapes this test.
        Assert.Equal(schemes.Sum(scheme => Colours().Count(scheme.Value)), Regex.Count(MotionPage.Style.Replace("color: #000000", "", StringComparison.Ordinal), "#[0-9a-f]{6}"));
    }

    static void AssertContrast(Dictionary<string, string> colours, string one, string other, double least)
    {
        var contrast = Wcag.Contrast(colours[one], colours[other]);
        Assert.True(contrast >= least, $"{one} #{colours[one]} on {other} #{colours[other]}: {contrast:0.00}");
    }

    static string Hash(string text) => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    [GeneratedRegex("Content-Security-Policy\" content=\"([^\"]+)\"")]
    private static partial Regex Policy();

    [GeneratedRegex("<script>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Script();

    [GeneratedRegex("<style>(.*?)</style>", RegexOptions.Singleline)]
    private static partial Regex StyleElement();

    [GeneratedRegex(@"https?://|<link|\ssrc=|url\(|@import|fetch\(|XMLHttpRequest|import\(")]
    private static partial Regex Fetches();

    [GeneratedRegex(@":root[^{]*\{[^}]+\}")]
    private static partial Regex Schemes();

    [GeneratedRegex(@"--ahead: ([0-9.]+);")]
    private static partial Regex Ahead();

    [GeneratedRegex("--([a-z-]+): #([0-9a-f]{6})")]
    private static partial Regex Colours();
}
