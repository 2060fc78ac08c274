using System.CommandLine;
using System.Net.Sockets;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Reference;
using NcLanguage.Server;

namespace NcLanguage.Cli.Serve;

/// <summary><c>serve</c>: the language server, for editors.</summary>
static class ServeCommand
{
    public static Command Create()
    {
        var stdio = new Option<bool>("--stdio") { Description = "Talk on standard input and output (what it does by itself)." };
        var pipe = new Option<string?>("--pipe") { HelpName = "NAME", Description = "Talk over a named pipe (a socket's path on Unix) on which the editor listens." };
        var socket = new Option<int?>("--socket", "--port") { HelpName = "PORT", Description = "Talk over a port of this computer on which the editor listens." };
        var process = new Option<int?>("--clientProcessId") { HelpName = "ID", Description = "Passed by some editors; the server learns it from the protocol as well." };
        var choices = new JobChoices();
        var command = new Command("serve", "The language server: an editor starts it and talks to it.") { stdio, pipe, socket, process };
        choices.AddTo(command);
        command.SetAction(parse =>
        {
            var options = new LanguageServerOptions
            {
                ErrorLog = Console.Error,
                Job = choices.Options(parse),
                Analysis = choices.Analysis(parse) with { MostBlocks = AnalysisOptions.MostBlocksWhileTyping },
                WriteReference = () => ReferenceCache.Write(Application.Version),
                Pages = new Pages(),
            };
            return Reach(() => (parse.GetValue(pipe), parse.GetValue(socket)) switch
            {
                ({ Length: > 0 } name, null) => ServerTransports.RunOnPipeAsync(name, options),
                (null, { } port) => ServerTransports.RunOnSocketAsync(port, options),
                (null, null) when !StandardStreams.AreOpen => throw new CannotRunException("standard input or output is closed: an editor talks to the server over both"),
                (null, null) => ServerTransports.RunOnStandardStreamsAsync(StandardStreams.Conversation(), options),
                _ => throw new CannotRunException("give either --pipe with a name or --socket with a port"),
            });
        });
        return command;
    }

    static async Task<int> Reach(Func<Task<int>> serve)
    {
        try
        {
            return await serve().ConfigureAwait(false);
        }
        catch (Exception e) when (e is SocketException or TimeoutException or ArgumentOutOfRangeException)
        {
            throw new CannotRunException($"nobody could be reached there: {e.Message}");
        }
    }
}
