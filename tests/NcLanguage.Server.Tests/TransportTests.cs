using System.IO.Pipes;
using System.Net;
using System.Net.Sockets;

namespace NcLanguage.Server.Tests;

/// <summary>Over a pipe and over a port the editor listens and the server connects, as the common LSP clients expect.</summary>
public sealed class TransportTests
{
    [Fact]
    public async Task A_pipe_serves()
    {
        var name = Path.Combine(Path.GetTempPath(), $"nclanguage-{Guid.NewGuid():N}");
        await using var pipe = new NamedPipeServerStream(name, PipeDirection.InOut, 1, PipeTransmissionMode.Byte, PipeOptions.Asynchronous);
        var server = ServerTransports.RunOnPipeAsync(name, new LanguageServerOptions());
        await pipe.WaitForConnectionAsync();
        await AssertServes(pipe, server);
    }

    [Fact]
    public async Task A_port_serves()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var server = ServerTransports.RunOnSocketAsync(((IPEndPoint)listener.LocalEndpoint).Port, new LanguageServerOptions());
        using var accepted = await listener.AcceptTcpClientAsync();
        await AssertServes(accepted.GetStream(), server);
    }

    static async Task AssertServes(Stream stream, Task<int> server)
    {
        await using var client = new TestClient(stream, server);
        Assert.NotNull(await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{}}"""));
        await client.RequestAsync("shutdown", null);
        await client.NotifyAsync("exit", null);
        Assert.Equal(0, await server.WaitAsync(TimeSpan.FromSeconds(10)));
    }
}
