using System.Text;
using NcLanguage.Syntax.Text;
using Spectre.Console;

namespace NcLanguage.Cli.Common;

/// <summary>Text for people on standard output: coloured on a terminal that can, plain everywhere else. What a terminal would obey, in a name or a program, is written out (<see cref="ShownText"/>).</summary>
sealed class Screen : IDisposable
{
    readonly TextWriter _plain;
    readonly IAnsiConsole? _coloured;

    Screen(TextWriter plain, IAnsiConsole? coloured, int width)
    {
        _plain = plain;
        _coloured = coloured;
        Width = width;
    }

    /// <summary>Places in a line; no limit where nobody looks at a terminal.</summary>
    public int Width { get; }

    /// <summary>For text that is never coloured.</summary>
    public TextWriter Writer => _plain;

    public static Screen Open()
    {
        if (Console.IsOutputRedirected)
            return new Screen(new StreamWriter(StandardStreams.Output(), new UTF8Encoding(false), 1 << 16), null, int.MaxValue);
        var coloured = Ansi(Console.Out);
        (coloured.Profile.Width, coloured.Profile.Height) = TerminalSize.Get();
        var width = Math.Max(40, coloured.Profile.Width);
        var hasColour = coloured.Profile.Capabilities.Ansi && coloured.Profile.Capabilities.ColorSystem != ColorSystem.NoColors;
        return new Screen(Console.Out, hasColour ? coloured : null, width);
    }

    /// <summary>A console that takes nothing for granted: what runs on a build server is no terminal.</summary>
    public static IAnsiConsole Ansi(TextWriter writer) => AnsiConsole.Create(new AnsiConsoleSettings
    {
        Out = new AnsiConsoleOutput(writer),
        Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
        ColorSystem = Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 } ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
    });

    /// <param name="text">Without line ends of its own.</param>
    public void Write(string text, Style? style = null)
    {
        text = ShownText.Of(text);
        if (_coloured is null || style is null)
            _plain.Write(text);
        else
            _coloured.Write(new Run(text, style.Value));
    }

    public void WriteLine(string text = "", Style? style = null)
    {
        Write(text, style);
        _plain.WriteLine();
    }

    /// <summary>Text broken at blanks so that it fits the screen, each line set in by that many blanks.</summary>
    /// <param name="hang">Further blanks that lines behind the first are set in by.</param>
    public void WriteParagraph(string text, int indent, Style? style = null, int hang = 0)
    {
        // Before it is broken, so that what is written out counts.
        var left = ShownText.Of(text).AsSpan();
        for (var isFirst = true; ; isFirst = false)
        {
            if (!isFirst && hang > 0)
                (indent, hang) = (indent + hang, 0);
            var room = Math.Max(30, Width == int.MaxValue ? int.MaxValue : Width - indent - 1);
            var end = left.Length <= room ? left.Length : left[..room].LastIndexOf(' ') is > 0 and var blank ? blank : room;
            Write(new string(' ', indent));
            WriteLine(left[..end].ToString(), style);
            if (end == left.Length)
                return;
            left = left[end..].TrimStart(' ');
        }
    }

    /// <summary>Lets what was written be seen now.</summary>
    public void Flush() => _plain.Flush();

    public void Dispose() => Flush();

    /// <summary>One styled stretch without any line breaking of its own.</summary>
    sealed class Run(string text, Style style) : Spectre.Console.Rendering.IRenderable
    {
        public Spectre.Console.Rendering.Measurement Measure(Spectre.Console.Rendering.RenderOptions options, int maxWidth) => new(text.Length, text.Length);

        public IEnumerable<Spectre.Console.Rendering.Segment> Render(Spectre.Console.Rendering.RenderOptions options, int maxWidth) =>
            [new Spectre.Console.Rendering.Segment(text, style)];
    }
}
