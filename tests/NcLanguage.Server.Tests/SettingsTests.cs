using System.Text;
using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Settings of the wrong shape: each is told once, in a sentence for the user, and the others count (LSP 3.17, "ShowMessage Notification").</summary>
public sealed class SettingsTests
{
    const string Uri = "file:///job/part.nc";
    const string Dwell = "G21 G90 G17 G54\nG4 P500\nM30\n";

    [Theory]
    [InlineData("\"setup\":7", "The setting nclanguage.setup must be a text, the path of a setup file, not a number; it is passed over.")]
    [InlineData("\"machine\":[\"a\"]", "The setting nclanguage.machine must be a text, the path of a machine file or the name of a built-in machine, not a list; it is passed over.")]
    [InlineData("\"portable\":\"yes\"", "The setting nclanguage.portable must be true or false, not a text; it is passed over.")]
    [InlineData("\"skipBlocks\":{}", "The setting nclanguage.skipBlocks must be true or false, not an object; it is passed over.")]
    public async Task A_setting_of_the_wrong_shape_is_told_and_the_others_count(string wrong, string sentence)
    {
        await using var client = await TestClient.InitializedAsync(more: ",\"initializationOptions\":{" + wrong + ",\"readings\":[\"dwell=milliseconds\"]}");
        await client.OpenAsync(Uri, Dwell);
        Assert.Equal($$"""{"type":2,"message":"{{sentence}}"}""", (await client.NextAsync("window/showMessage")).ToJsonString());
        Assert.Contains("0.5 s", await DwellAsync(client), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"dwell=milliseconds\"", "The setting nclanguage.readings must be a list of texts such as \"dwell=milliseconds\", not a text; it is passed over.", "8 min 20 s")]
    [InlineData("[7,\"dwell=milliseconds\"]", "The setting nclanguage.readings must be a list of texts such as \"dwell=milliseconds\"; a number in it is passed over.", "0.5 s")]
    [InlineData("[\"dwell\"]", "The reading \"dwell\" is not of the form NAME=CHOICE, such as dwell=seconds.", "8 min 20 s")]
    public async Task Readings_that_are_none_are_told(string readings, string sentence, string dwell)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Dwell);
        await SendAsync(client, "{\"readings\":" + readings + "}");
        Assert.Contains(dwell, await DwellAsync(client), StringComparison.Ordinal);
        Assert.Equal(sentence, (string?)(await client.NextAsync("window/showMessage"))["message"]);
    }

    /// <summary>Half of a surrogate pair is JSON (RFC 8259 section 8.2) but no text: the other settings count all the same.</summary>
    [Theory]
    [InlineData("\"setup\":\"\\ud800\"")]
    [InlineData("\"\\ud800\":1")]
    public async Task Half_a_sign_in_a_setting_is_no_fault(string odd)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Dwell);
        var message = $$"""{"jsonrpc":"2.0","method":"workspace/didChangeConfiguration","params":{"settings":{"nclanguage":{{{odd}},"readings":["dwell=milliseconds"]} } } }""";
        await client.SendRawAsync(Encoding.ASCII.GetBytes($"Content-Length: {message.Length}\r\n\r\n{message}"));
        Assert.Contains("0.5 s", await DwellAsync(client), StringComparison.Ordinal);
        Assert.DoesNotContain(client.Log, told => (string?)told["method"] == "window/logMessage" && (int)told["params"]!["type"]! == 1);
    }

    [Fact]
    public async Task The_same_is_not_told_twice()
    {
        await using var client = await TestClient.InitializedAsync(more: ",\"initializationOptions\":{\"portable\":1,\"readings\":[\"no=such\"]}");
        await client.OpenAsync(Uri, Dwell);
        await client.OpenAsync("file:///job/other.nc", Dwell);
        await DwellAsync(client);
        await SendAsync(client, "{\"portable\":2,\"readings\":[\"no=such\"],\"skipBlocks\":true}");
        await DwellAsync(client);
        await SendAsync(client, "[]");
        await DwellAsync(client);
        // An answer may overtake what is only told; the last of those comes behind the others.
        await client.NextAsync("window/showMessage", told => ((string)told["message"]!).Contains("not a list", StringComparison.Ordinal));
        string[] told = [.. client.Log.Where(message => (string?)message["method"] == "window/showMessage").Select(message => (string)message["params"]!["message"]!)];
        Assert.Equal(3, told.Length);
        Assert.Equal(3, told.Distinct().Count());
        Assert.Contains("The settings of nclanguage must be an object with members such as \"setup\" and \"readings\", not a list; they are passed over.", told);
    }

    [Theory]
    [InlineData("{\"settings\":7}")]
    [InlineData("{\"settings\":{\"nclanguage\":null}}")]
    [InlineData("{\"settings\":[]}")]
    public async Task Settings_that_are_not_ours_are_no_fault(string parameters)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Dwell);
        await client.NotifyAsync("workspace/didChangeConfiguration", parameters);
        Assert.Contains("8 min 20 s", await DwellAsync(client), StringComparison.Ordinal);
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "window/showMessage");
    }

    static Task SendAsync(TestClient client, string settings) =>
        client.NotifyAsync("workspace/didChangeConfiguration", "{\"settings\":{\"nclanguage\":" + settings + "}}");

    static async Task<string> DwellAsync(TestClient client)
    {
        var hover = await client.RequestAsync("textDocument/hover", "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"position\":{\"line\":1,\"character\":4}}");
        return (string)hover!["contents"]!["value"]!;
    }
}
