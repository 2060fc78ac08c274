using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>nclanguage/motionView and nclanguage/setupSheet, and the commands that open these pages in a browser (workspace/executeCommand).</summary>
sealed class PageFeature(IPages? pages)
{
    public const string OpenMotionView = "nclanguage.openMotionView";
    public const string OpenSetupSheet = "nclanguage.openSetupSheet";

    public static string[] Commands { get; } = [OpenMotionView, OpenSetupSheet];

    public PageAnswer MotionView(FeatureContext context, string? nonce) => new(Pages.MotionView(InputOf(context), nonce, context.Cancel), context.Uri);

    public PageAnswer SetupSheet(FeatureContext context) => new(Pages.SetupSheet(InputOf(context), context.Cancel), context.Uri);

    /// <summary>Writes the page that a command asks for, and gives its path.</summary>
    public string Write(FeatureContext context, string command)
    {
        var name = Path.GetFileNameWithoutExtension(context.Path ?? "program");
        (var ending, var page) = command == OpenMotionView
            ? ("motion", MotionView(context, null).Html)
            : ("setup-sheet", SetupSheet(context).Html);
        try
        {
            return Pages.Write($"{name}.{ending}.html", page);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Errors.Refused($"The page could not be written: {e.Message}");
        }
    }

    /// <summary>The document that a command is for; null where its arguments name none.</summary>
    public static string? DocumentOf(ExecuteCommandParams request) =>
        request.Arguments is [{ ValueKind: System.Text.Json.JsonValueKind.String } uri, ..] && Array.IndexOf(Commands, request.Command) >= 0 ? JsonText.TextOf(uri) : null;

    public static Exception Refused(ExecuteCommandParams request) => Errors.Exception(JsonRpcErrorCode.InvalidParams,
        Array.IndexOf(Commands, request.Command) < 0 ? $"There is no command {Excerpt.OfName(request.Command)}." : $"{request.Command} takes the address of a program or a setup file.");

    IPages Pages => pages ?? throw Errors.Exception(JsonRpcErrorCode.MethodNotFound, "This server makes no pages.");

    static PageInput InputOf(FeatureContext context) => new(context.Path ?? context.Uri, context.Analysis, context.Job.Inputs.Problems);
}
