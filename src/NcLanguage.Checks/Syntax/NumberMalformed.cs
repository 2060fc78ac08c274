using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A number that cannot be read, or a block number of the wrong form.</summary>
public sealed class NumberMalformed : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1003",
        Name = "number-malformed",
        Severity = Severity.Error,
        Title = "A number cannot be read",
        Finds =
            "A number with two points, a comma for the point, a sign or a letter O inside, without a digit, or too large; and a block number (N) that is negative, not whole, or of more than five digits. Of "
            + "the block numbers beyond 99999 that a long file counts up to, only the first is reported.",
        AtTheMachine = "The control stops with an alarm, or reads something else than was meant.",
        Example = """
            G21 G90 G17 G54
            G0 X10.2.5 Y10
            ~  ^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10.25 Y10
            M30
            """,
        NotFound = "Numbers that are well formed and wrong. Many controls take block numbers of more than five digits.",
        Source = "NISTIR 6556 §3.3.1 (block numbers) and §3.3.2.1 (numbers).",
    };

    const int GreatestBlockNumber = 99_999;

    public override StepEvents Interest => StepEvents.OddText;

    public override bool ReadsFile => true;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        var tokens = step.Block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            ref readonly var token = ref tokens[i];
            if (token.IsMalformed && !token.IsExpression)
                step.Report(this, i, Malformed(step.Block, token));
            else if (token.IsWord('N') && !token.IsExpression && BlockNumberFault(step.Block, token) is { } fault)
                step.Report(this, i, fault);
        }
    }

    public override void CheckFile(in FileContext file)
    {
        for (var chunk = 0; chunk < file.Run.Texts.Length; chunk++)
        {
            if (file.Run.Texts[chunk].NumberRange.Greatest <= GreatestBlockNumber)
                continue;
            foreach (var number in file.Run.Texts[chunk].Numbers)
            {
                if (number.Number <= GreatestBlockNumber)
                    continue;
                var line = file.Run.Text.FirstLineOf(chunk) + number.Line;
                var block = file.Run.BlockAt(line);
                var token = block.Tokens[block.NumberIndex];
                file.Report(this, line, token.Start, token.End,
                    $"From {Quote.Word(block, token)} on the block numbers have more than five digits: the published language allows five, and a control that keeps to it stops here.");
                return;
            }
        }
    }

    static string Malformed(in Block block, in Token token)
    {
        var number = block.Line[token.ValueStart..token.End];
        var word = Quote.Word(block, token);
        if (number.Contains((byte)','))
            return $"{word} has a comma: write a decimal point, not a comma; the control stops here with an alarm.";
        if (number[^1] is (byte)'O' or (byte)'o')
            return $"{word} ends in the letter O, not in the digit 0: the control stops here with an alarm.";
        if (number.IndexOfAny((byte)'O', (byte)'o') >= 0)
            return $"{word} has the letter O inside, not the digit 0: the control stops here with an alarm.";
        if (number[1..].IndexOfAny((byte)'+', (byte)'-') >= 0)
            return $"{word} has a sign inside the number: the control stops here with an alarm.";
        if (number.Count((byte)'.') > 1)
            return $"{word} has more than one decimal point: the control stops here with an alarm.";
        return number.IndexOfAnyInRange((byte)'0', (byte)'9') < 0
            ? $"{word} has no digit: the control stops here with an alarm."
            : $"{word} is larger than any number a control can hold.";
    }

    static string? BlockNumberFault(in Block block, in Token token)
    {
        if (!(token.Value >= 0) || token.Value != Math.Floor(token.Value))
            return $"{Quote.Word(block, token)}: a block number is a whole number from 0 to {GreatestBlockNumber}.";
        var digits = 0;
        foreach (var c in block.Line[token.ValueStart..token.End])
            if (c is >= (byte)'0' and <= (byte)'9')
                digits++;
        if (digits <= 5 || token.Value is > GreatestBlockNumber and < 1e9)
            return null;
        return $"{Quote.Word(block, token)} has {digits} digits: a block number has one to five.";
    }
}
