using System.Globalization;
using System.Text;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>What is asked of the whole of a large program can be called off while it is being worked out, and is answered as before when it is asked anew.</summary>
public sealed class CancelledAmidWorkTests
{
    const string Uri = "file:///job/part.nc";
    const int Holes = 100_000;

    /// <summary>The test loses the race where each answer is worked out before its cancelling is read.</summary>
    const int Rounds = 20;

    [Theory]
    [InlineData("textDocument/documentSymbol")]
    [InlineData("textDocument/foldingRange")]
    [InlineData("nclanguage/holes")]
    public async Task It_ends_when_it_is_cancelled(string method)
    {
        const string Document = $$"""{"textDocument":{"uri":"{{Uri}}"} }""";
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Program());
        var whole = (await client.RequestAsync(method, Document))!;
        var cancelled = 0;
        for (var round = 0; round < Rounds; round++)
        {
            (var id, var answer) = client.BeginAsync(method, Document);
            await client.NotifyAsync("$/cancelRequest", $$"""{"id":{{id}} }""");
            var error = (int?)(await answer)["error"]?["code"];
            Assert.True(error is null or -32800, $"{error}");
            cancelled += error is null ? 0 : 1;
        }
        Assert.InRange(cancelled, 1, Rounds);
        Assert.Equal(whole.ToJsonString(), (await client.RequestAsync(method, Document))!.ToJsonString());
    }

    /// <summary>A tool change each thousand holes, so that outline and folds have something to tell.</summary>
    static string Program()
    {
        var text = new StringBuilder("G21 G90 G17 G54\n");
        for (var hole = 0; hole < Holes; hole++)
        {
            if (hole % 1000 == 0)
                text.Append(CultureInfo.InvariantCulture, $"G80\nT{1 + hole / 1000} M6\nS1000 M3\nG43 H1 G0 X0 Y0 Z50\nG99 G81 X0 Y0 Z-4 R2 F180\n");
            text.Append(CultureInfo.InvariantCulture, $"X{hole % 300}.5 Y{hole / 300}.5\n");
        }
        return text.Append("G80\nM30\n").ToString();
    }
}
