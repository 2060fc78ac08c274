using System.Runtime.InteropServices;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>A generated parser, by tree-sitter's C interface (version 0.20): a text is parsed, an edit is told, and the text is parsed again with the tree before.</summary>
sealed unsafe class TreeSitter : IDisposable
{
    readonly delegate* unmanaged<nint, nint, byte*, uint, nint> _parse;
    readonly delegate* unmanaged<nint, InputEdit*, void> _edit;
    readonly delegate* unmanaged<nint, void> _delete;
    readonly delegate* unmanaged<nint, void> _deleteParser;
    readonly nint _parser;
    nint _tree;

    /// <param name="library">A shared library that holds the grammar of C and is linked to the C library.</param>
    public TreeSitter(string library)
    {
        var grammar = NativeLibrary.Load(library);
        var runtime = NativeLibrary.Load("libtree-sitter.so.0");
        _parse = (delegate* unmanaged<nint, nint, byte*, uint, nint>)NativeLibrary.GetExport(runtime, "ts_parser_parse_string");
        _edit = (delegate* unmanaged<nint, InputEdit*, void>)NativeLibrary.GetExport(runtime, "ts_tree_edit");
        _delete = (delegate* unmanaged<nint, void>)NativeLibrary.GetExport(runtime, "ts_tree_delete");
        _deleteParser = (delegate* unmanaged<nint, void>)NativeLibrary.GetExport(runtime, "ts_parser_delete");
        _parser = ((delegate* unmanaged<nint>)NativeLibrary.GetExport(runtime, "ts_parser_new"))();
        var language = ((delegate* unmanaged<nint>)NativeLibrary.GetExport(grammar, "tree_sitter_c"))();
        if (((delegate* unmanaged<nint, nint, byte>)NativeLibrary.GetExport(runtime, "ts_parser_set_language"))(_parser, language) == 0)
            throw new InvalidOperationException("The grammar is of another version than the C library.");
    }

    /// <summary>Parses a text from nothing.</summary>
    public void Parse(ReadOnlySpan<byte> text)
    {
        Drop();
        fixed (byte* at = text)
            _tree = _parse(_parser, 0, at, (uint)text.Length);
    }

    /// <summary>Parses a text again after bytes without a line end were put into the one before.</summary>
    /// <param name="text">The text as it is now.</param>
    /// <param name="at">Where they stand.</param>
    /// <param name="count">How many.</param>
    public void Insert(ReadOnlySpan<byte> text, int at, int count)
    {
        var row = (uint)text[..at].Count((byte)'\n');
        var column = (uint)(at - text[..at].LastIndexOf((byte)'\n') - 1);
        var edit = new InputEdit
        {
            Start = (uint)at, OldEnd = (uint)at, NewEnd = (uint)(at + count),
            StartPoint = new(row, column), OldEndPoint = new(row, column), NewEndPoint = new(row, column + (uint)count),
        };
        _edit(_tree, &edit);
        var before = _tree;
        fixed (byte* bytes = text)
            _tree = _parse(_parser, before, bytes, (uint)text.Length);
        _delete(before);
    }

    public void Dispose()
    {
        Drop();
        _deleteParser(_parser);
    }

    void Drop()
    {
        if (_tree != 0)
            _delete(_tree);
        _tree = 0;
    }

    readonly record struct PointInText(uint Row, uint Column);

    struct InputEdit
    {
        public uint Start, OldEnd, NewEnd;
        public PointInText StartPoint, OldEndPoint, NewEndPoint;
    }
}
