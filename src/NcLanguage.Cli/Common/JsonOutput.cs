using System.Text.Encodings.Web;
using System.Text.Json;

namespace NcLanguage.Cli.Common;

/// <summary>JSON on standard output: UTF-8 whatever the terminal's encoding, one line break at its end.</summary>
static class JsonOutput
{
    public static void Write(Action<Utf8JsonWriter> write)
    {
        using var output = new BufferedStream(StandardStreams.Output(), 1 << 16);
        // The output is no part of a web page: quotes and umlauts may stand as they are.
        using (var json = new Utf8JsonWriter(output, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            write(json);
        output.WriteByte((byte)'\n');
    }
}
