using System.IO.Pipes;
using System.Net;
using System.Net.Sockets;

namespace NcLanguage.Server;

/// <summary>The ways an editor reaches the server: it starts the process and talks over its standard streams, or listens on a pipe
/// or a port that the server then connects to.</summary>
public static class ServerTransports
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Serves over stdin and stdout. Whatever else the process writes to the console goes to stderr from here on.</summary>
    /// <param name="output">Stdout; a write fails where nobody reads it any more.</param>
    /// <returns>The process's exit code.</returns>
    public static Task<int> RunOnStandardStreamsAsync(Stream output, LanguageServerOptions options)
    {
        Console.SetOut(Console.Error);
        // Waiting for stdin takes one pool thread for good; on a machine of two cores the rest would queue behind the other.
        ThreadPool.GetMinThreads(out var workers, out var completions);
        ThreadPool.SetMinThreads(Math.Max(workers, 4), completions);
        return LanguageServer.RunAsync(Console.OpenStandardInput(), output, options);
    }

    /// <summary>Serves over a named pipe (a socket's path on Unix) that the editor has made.</summary>
    /// <exception cref="TimeoutException">Nobody listens on the pipe.</exception>
    /// <exception cref="IOException">The pipe can't be opened.</exception>
    public static async Task<int> RunOnPipeAsync(string name, LanguageServerOptions options)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        const string WindowsPrefix = @"\\.\pipe\";
        if (name.StartsWith(WindowsPrefix, StringComparison.OrdinalIgnoreCase))
            name = name[WindowsPrefix.Length..];
        using var pipe = new NamedPipeClientStream(".", name, PipeDirection.InOut, PipeOptions.Asynchronous);
        await pipe.ConnectAsync(Patience, CancellationToken.None).ConfigureAwait(false);
        return await LanguageServer.RunAsync(pipe, pipe, options).ConfigureAwait(false);
    }

    /// <summary>Serves over a port of this computer that the editor listens on.</summary>
    /// <exception cref="SocketException">Nobody listens on the port.</exception>
    public static async Task<int> RunOnSocketAsync(int port, LanguageServerOptions options)
    {
        using var socket = new TcpClient { NoDelay = true };
        await socket.ConnectAsync(IPAddress.Loopback, port).ConfigureAwait(false);
        var stream = socket.GetStream();
        return await LanguageServer.RunAsync(stream, stream, options).ConfigureAwait(false);
    }
}
