namespace NcLanguage.EndToEnd.Support;

enum Editor
{
    Neovim,
    Workbench,

    /// <summary>Emacs with eglot.</summary>
    Emacs,

    /// <summary>Vim with ALE.</summary>
    Vim,

    /// <summary>Kate, and what gives it a screen and takes its picture.</summary>
    Kate,

    /// <summary>Chromium, and the tools that read the paper it prints.</summary>
    Printer,

    /// <summary>No editors, but the shells zsh and fish.</summary>
    Shells,

    /// <summary>No editor, but the browser that pages are opened in, and its driver.</summary>
    Browser,
}

/// <summary>Where the real editors are that install.sh installs.</summary>
static class Editors
{
    const string Script = "tests/NcLanguage.EndToEnd/install.sh";

    /// <summary>True on a build server, where a missing editor is a fault and no reason to skip.</summary>
    public static bool MustRun => Environment.GetEnvironmentVariable("CI") is { Length: > 0 };

    public static string? Neovim => OnPath("nvim");

    public static string? Emacs => OnPath("emacs");

    public static string? Vim => OnPath("vim");

    public static string? Chromium => OnPath("chromium");

    public static string? PdfText => OnPath("pdftotext");

    /// <summary>The folder with code-server and the browser's driver in node_modules, or null.</summary>
    public static string? Workbench
    {
        get
        {
            var cache = Environment.GetEnvironmentVariable("NCLANGUAGE_E2E_CACHE") is { Length: > 0 } named
                ? named
                : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".cache", "nclanguage-e2e");
            return Directory.Exists(cache)
                ? Directory.EnumerateDirectories(cache, "workbench-*").FirstOrDefault(folder => File.Exists(Path.Combine(folder, ".complete")))
                : null;
        }
    }

    /// <summary>Why a test that needs this editor cannot run here, or null when it can.</summary>
    public static string? Missing(Editor editor)
    {
        var there = editor switch
        {
            Editor.Neovim => Neovim is not null,
            Editor.Emacs => Emacs is not null && Directory.Exists("/usr/share/emacs/site-lisp/elpa-src") && Directory.EnumerateDirectories("/usr/share/emacs/site-lisp/elpa-src", "eglot-*").Any(),
            Editor.Vim => Vim is not null && Directory.Exists("/usr/share/vim-ale"),
            Editor.Kate => new[] { "kate", "xvfb-run", "dbus-run-session", "openbox", "import" }.All(name => OnPath(name) is not null),
            Editor.Printer => Chromium is not null && PdfText is not null,
            Editor.Shells => OnPath("zsh") is not null && OnPath("fish") is not null,
            Editor.Browser => Workbench is not null && Chromium is not null,
            _ => Workbench is not null && Chromium is not null && Directory.Exists(Repository.At("editor-clients", "vscode", "node_modules")),
        };
        return there ? null : $"{editor} is not installed; {Script} installs it.";
    }

    static string? OnPath(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, name))
        .FirstOrDefault(File.Exists);
}

/// <summary>A test that needs an editor. Where that is missing it is skipped, but on a build server it runs and fails.</summary>
[AttributeUsage(AttributeTargets.Method)]
sealed class EditorFactAttribute : FactAttribute
{
    public EditorFactAttribute(Editor editor)
    {
        if (!Editors.MustRun)
            Skip = Editors.Missing(editor);
    }
}

/// <summary>As <see cref="EditorFactAttribute"/>, for a test with cases.</summary>
[AttributeUsage(AttributeTargets.Method)]
sealed class EditorTheoryAttribute : TheoryAttribute
{
    public EditorTheoryAttribute(Editor editor)
    {
        if (!Editors.MustRun)
            Skip = Editors.Missing(editor);
    }
}
