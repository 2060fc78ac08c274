namespace NcLanguage.Server.Protocol;

/// <summary>The settings of the section <c>nclanguage</c>; what is left out is as the command line of the server has it.</summary>
/// <param name="Setup">A setup file for all programs.</param>
/// <param name="Machine">A machine file or a built-in profile for all programs.</param>
/// <param name="Readings">Readings as NAME=CHOICE.</param>
/// <param name="Portable">Tell what other readings would change although a machine was chosen.</param>
/// <param name="SkipBlocks">Pass over blocks with /.</param>
/// <param name="LogDetails">Name files, and what an exception says, in the log: they may tell what stands in a program.</param>
sealed record EditorSettings(string? Setup = null, string? Machine = null, string[]? Readings = null, bool? Portable = null, bool? SkipBlocks = null, bool? LogDetails = null);

sealed record DidChangeConfigurationParams(System.Text.Json.JsonElement? Settings = null);

sealed record ConfigurationParams(ConfigurationItem[] Items);

sealed record ConfigurationItem(string Section);

sealed record RenameFilesParams(FileRename[] Files);

sealed record FileRename(string OldUri, string NewUri);

sealed record DidChangeWorkspaceFoldersParams(WorkspaceFoldersChangeEvent Event);

sealed record WorkspaceFoldersChangeEvent(WorkspaceFolder[] Added, WorkspaceFolder[] Removed);

sealed record WorkspaceServerCapabilities(WorkspaceFoldersServerCapabilities WorkspaceFolders, FileOperationOptions FileOperations);

sealed record WorkspaceFoldersServerCapabilities(bool Supported, bool ChangeNotifications);

sealed record FileOperationOptions(FileOperationRegistrationOptions WillRename);

sealed record FileOperationRegistrationOptions(FileOperationFilter[] Filters);

sealed record FileOperationFilter(FileOperationPattern Pattern, string Scheme = "file");

sealed record FileOperationPattern(string Glob, string Matches = "file");
