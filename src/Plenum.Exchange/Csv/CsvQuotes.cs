namespace Plenum.Exchange.Csv;

/// <summary>How a cell uses quotation marks.</summary>
internal enum QuoteUse
{
    /// <summary>No quotation marks: the cell is its own value.</summary>
    Bare,

    /// <summary>In quotation marks, each one inside doubled (RFC 4180, section 2, rules 5 to 7).</summary>
    Quoted,

    /// <summary>A quotation mark inside a cell that does not begin with one.</summary>
    Stray,

    /// <summary>Something between the closing quotation mark and the separator.</summary>
    TextAfter,

    /// <summary>The closing quotation mark is missing.</summary>
    Open,
}

/// <summary>The quotation marks of one cell.</summary>
internal static class CsvQuotes
{
    /// <summary>How the cell uses them, and from where on it breaks the rules.</summary>
    public static QuoteUse Look(ReadOnlySpan<char> cell, out int wrongFrom)
    {
        wrongFrom = cell.IndexOf('"');
        if (wrongFrom < 0)
        {
            return QuoteUse.Bare;
        }

        if (wrongFrom > 0)
        {
            return QuoteUse.Stray;
        }

        for (var at = 1; at < cell.Length; at += 2)
        {
            var mark = cell[at..].IndexOf('"');
            if (mark < 0)
            {
                break;
            }

            at += mark;
            wrongFrom = at + 1;
            if (wrongFrom == cell.Length)
            {
                return QuoteUse.Quoted;
            }

            if (cell[wrongFrom] != '"')
            {
                return QuoteUse.TextAfter;
            }
        }

        wrongFrom = 0;
        return QuoteUse.Open;
    }

    /// <summary>Writes the value of a <see cref="QuoteUse.Quoted"/> cell and returns its length.</summary>
    public static int Unquote(ReadOnlySpan<char> cell, Span<char> value)
    {
        var inner = cell[1..^1];
        var length = 0;
        while (inner.IndexOf('"') is >= 0 and var mark)
        {
            inner[..(mark + 1)].CopyTo(value[length..]);
            length += mark + 1;
            inner = inner[(mark + 2)..];
        }

        inner.CopyTo(value[length..]);
        return length + inner.Length;
    }
}
