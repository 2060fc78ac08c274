using System.Globalization;
using System.IO.Pipelines;
using System.Text;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>How a session ends while something is being sent (LSP 3.17, "Base Protocol": a message has as many bytes as its header says).</summary>
public sealed class FarewellTests
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task A_message_that_is_being_sent_at_exit_leaves_whole()
    {
        var sent = new Pipe();
        var output = new SlowOutput(TimeSpan.FromMilliseconds(10));
        var session = LanguageServer.RunAsync(sent.Reader.AsStream(), output, new LanguageServerOptions());
        await sent.Writer.WriteAsync(Opening(blocks: 200));
        Assert.True(SpinWait.SpinUntil(() => output.Text.Contains("publishDiagnostics", StringComparison.Ordinal), Patience));
        Assert.False(IsWhole(output.Text));
        await sent.Writer.WriteAsync(Frame("""{"jsonrpc":"2.0","method":"exit"}"""));
        Assert.Equal(1, await session.WaitAsync(Patience));
        Assert.True(IsWhole(output.Text));
    }

    [Fact]
    public async Task A_client_that_takes_nothing_more_and_closes_its_end_keeps_nobody()
    {
        var sent = new Pipe();
        var session = LanguageServer.RunAsync(sent.Reader.AsStream(), new SlowOutput(Timeout.InfiniteTimeSpan), new LanguageServerOptions());
        await sent.Writer.WriteAsync(Opening(blocks: 1));
        await sent.Writer.CompleteAsync();
        Assert.Equal(1, await session.WaitAsync(Patience));
    }

    [Theory]
    [InlineData("Content-Len")]
    [InlineData("Content-Length: 50\r\n\r\n{")]
    public async Task What_was_asked_before_a_cut_message_is_answered(string cut)
    {
        var sent = new Pipe();
        var output = new SlowOutput(TimeSpan.FromMilliseconds(1));
        var session = LanguageServer.RunAsync(sent.Reader.AsStream(), output, new LanguageServerOptions());
        await sent.Writer.WriteAsync((byte[])[.. Opening(blocks: 1), .. Encoding.ASCII.GetBytes(cut)]);
        await sent.Writer.CompleteAsync();
        Assert.Equal(1, await session.WaitAsync(Patience));
        Assert.Contains("\"capabilities\"", output.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_client_that_takes_nothing_any_more_ends_the_session_with_1_and_one_line()
    {
        var sent = new Pipe();
        var log = new StringWriter();
        var session = LanguageServer.RunAsync(sent.Reader.AsStream(), new GoneOutput(), new LanguageServerOptions { ErrorLog = log });
        await sent.Writer.WriteAsync(Opening(blocks: 1));
        Assert.Equal(1, await session.WaitAsync(Patience));
        Assert.Equal("nclanguage: The connection broke: Nobody reads." + Environment.NewLine, log.ToString());
    }

    static byte[] Opening(int blocks)
    {
        var text = string.Concat(Enumerable.Repeat("G1 X1. Q\\n", blocks));
        return [
            .. Frame("""{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}"""),
            .. Frame("""{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///job/part.nc","languageId":"nc","version":1,"text":"TEXT"}}}""".Replace("TEXT", text, StringComparison.Ordinal))];
    }

    static byte[] Frame(string message) => Encoding.ASCII.GetBytes($"Content-Length: {message.Length}\r\n\r\n{message}");

    /// <summary>Whether the text is messages and nothing else; all of it is ASCII.</summary>
    static bool IsWhole(string text)
    {
        const string Length = "Content-Length: ";
        for (var at = 0; at < text.Length;)
        {
            var end = text.IndexOf("\r\n\r\n", at, StringComparison.Ordinal);
            if (end < 0)
                return false;
            var number = text.IndexOf(Length, at, StringComparison.Ordinal) + Length.Length;
            at = end + 4 + int.Parse(text.AsSpan(number, text.IndexOf('\r', number) - number), CultureInfo.InvariantCulture);
            if (at > text.Length)
                return false;
        }
        return true;
    }

    /// <summary>Takes a few bytes at a time, with a pause before each lot.</summary>
    sealed class SlowOutput(TimeSpan pause) : MemoryStream
    {
        readonly Lock _gate = new();
        readonly StringBuilder _text = new();

        public string Text
        {
            get { lock (_gate) return _text.ToString(); }
        }

        public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            for (var at = 0; at < buffer.Length; at += 1000)
            {
                await Task.Delay(pause, CancellationToken.None);
                lock (_gate)
                    _text.Append(Encoding.ASCII.GetString(buffer.Span[at..Math.Min(at + 1000, buffer.Length)]));
            }
        }
    }

    sealed class GoneOutput : MemoryStream
    {
        public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default) =>
            ValueTask.FromException(new IOException("Nobody reads."));
    }
}
