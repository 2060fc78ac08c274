using System.Text.Json;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>Code actions for clients that know only commands: each is a command that carries its edit, and carried out it asks the client to make it.</summary>
static class EditCommand
{
    public const string Name = "nclanguage.applyEdit";

    /// <summary>The command, for a client that is offered it.</summary>
    public static string[] CommandsFor(ClientProfile client) => IsFor(client) ? [Name] : [];

    /// <summary>CodeAction[] or, for a client that does not know these, Command[]; nothing where it can't be asked to make an edit either, and then no action is worked out.</summary>
    public static JsonElement Answer(ClientProfile client, Func<CodeAction[]> actions) => client.CodeActionLiterals
        ? JsonSerializer.SerializeToElement(actions(), ProtocolJson.Default.CodeActionArray)
        : JsonSerializer.SerializeToElement(IsFor(client) ? [.. actions().Where(action => action.Edit is not null).Select(CommandOf)] : [], ProtocolJson.Default.CommandArray);

    /// <summary>The edit that a command carries; null for other commands.</summary>
    public static JsonElement? EditOf(ExecuteCommandParams request) =>
        request is { Command: Name, Arguments: [{ ValueKind: JsonValueKind.Object } edit] } ? edit : null;

    static bool IsFor(ClientProfile client) => !client.CodeActionLiterals && client.AppliesEdits;

    static Command CommandOf(CodeAction action) => new(action.Title, Name, [JsonSerializer.SerializeToElement(action.Edit!, ProtocolJson.Default.WorkspaceEdit)]);
}
