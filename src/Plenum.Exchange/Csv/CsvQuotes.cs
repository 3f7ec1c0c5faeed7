namespace Plenum.Exchange.Csv;

/// <summary>How a cell uses quotation marks.</summary>
internal enum QuoteUse
{
    /// <summary>No quotation marks: the cell is its own value.</summary>
    Bare,

    /// <summary>In quotation marks, with none inside (RFC 4180, section 2, rules 5 and 6).</summary>
    Quoted,

    /// <summary>In quotation marks, with some inside, each doubled (rule 7).</summary>
    Doubled,

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

        var doubled = false;
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
                return doubled ? QuoteUse.Doubled : QuoteUse.Quoted;
            }

            if (cell[wrongFrom] != '"')
            {
                return QuoteUse.TextAfter;
            }

            doubled = true;
        }

        wrongFrom = 0;
        return QuoteUse.Open;
    }

    /// <summary>Writes a value with each doubled quotation mark once, and returns its length.</summary>
    public static int Undouble(ReadOnlySpan<char> doubled, Span<char> value)
    {
        var length = 0;
        while (doubled.IndexOf('"') is >= 0 and var mark)
        {
            doubled[..(mark + 1)].CopyTo(value[length..]);
            length += mark + 1;
            doubled = doubled[(mark + 2)..];
        }

        doubled.CopyTo(value[length..]);
        return length + doubled.Length;
    }
}
