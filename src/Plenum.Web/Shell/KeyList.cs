namespace Plenum.Web.Shell;

/// <summary>The keys that act on a sheet, for the list that <c>?</c> opens. One job per key and place.</summary>
public static class KeyList
{
    /// <param name="chapter">The chapter's word; empty on pages that belong to none.</param>
    /// <param name="hasMap">A project is shown, and so is its map.</param>
    public static IEnumerable<(string Title, (string Pressed, string Does)[] Keys)> For(
        string chapter,
        bool hasMap
    )
    {
        yield return (
            "Everywhere",
            hasMap
                ?
                [
                    ("/", "go to a code, name or person"),
                    .. Chapters.All.Select(known =>
                        ($"Alt {known.Key}", $"chapter {known.Number}, {known.Name}")
                    ),
                    ("Alt, again", "on to the next place of the open chapter"),
                    ("F6", "on to map, work area, side sheet; back with Shift"),
                    ("Ctrl Z", "take back the last edit, outside a field"),
                    ("Ctrl Y", "do it again"),
                    ("?", "this list"),
                ]
                : [("?", "this list")]
        );
        if (hasMap && chapter != "import")
        {
            yield return (
                "Map, while it has the keys",
                [
                    ("← →", "sister before, sister after"),
                    ("↑", "parent"),
                    ("↓", "first child"),
                    ("Home End", "first and last sister"),
                    ("Enter", "open it in the work area"),
                    ("+ −", "zoom in and out"),
                    ("0", "whole project"),
                    ("G", "next gap"),
                    ("M", "width by budget, hours or count"),
                ]
            );
        }

        if (!hasMap)
        {
            yield return ("Projects", [("1", "open a project"), ("2", "make a project")]);
        }
        else if (OfChapter(chapter) is { } own)
        {
            yield return own;
        }
    }

    private static (string, (string, string)[])? OfChapter(string chapter) =>
        chapter switch
        {
            "breakdown/parts" => (
                "Parts and activities",
                [
                    ("← ↑ → ↓", "from cell to cell; with Shift a block"),
                    ("Home End", "first and last activity; with Ctrl first and last part"),
                    ("0 to 9", "write the hours; plans the cell where it is missing"),
                    ("P", "plan the cell, or all missing cells of the block"),
                    ("X", "not needed, because…"),
                    ("A", "the question to the person in charge, to be sent by you"),
                    ("T", "part type of the parts of the block"),
                    ("W", "apply the work set to the parts of the block"),
                    ("Ctrl C V", "copy the block; fill another with it"),
                    ("Ctrl D", "fill down, from the first row of the block or the row above"),
                    ("F", "fill to the right, from the first column of the block"),
                    ("Delete", "clear: reasons, and packages without work of their own"),
                    ("Enter", "focus the part"),
                ]
            ),
            "breakdown/sets" => (
                "Part types and work sets",
                [
                    ("← ↑ → ↓", "from cell to cell"),
                    ("Enter F2", "write into the cell; or begin to type"),
                    ("Tab", "write it, on to the next cell"),
                    ("Esc", "leave the cell as it was"),
                    ("Ctrl , .", "move the activity up and down"),
                    ("Delete", "empty the cell; on the name: take the activity out of the set"),
                ]
            ),
            "estimate" => (
                "Estimate",
                [
                    ("← ↑ → ↓", "from cell to cell; with Shift a block"),
                    ("Enter F2", "write into the cell; or begin to type"),
                    ("Tab", "write it, on to the next cell"),
                    ("Esc", "leave the cell as it was"),
                    ("Ctrl C V", "copy the block; paste rows, further ones become new lines"),
                    ("Insert", "new line for the package; Ctrl Enter does the same"),
                    ("Delete", "empty the cells; on the cost element: take the lines out"),
                    ("B", "from the side: say what the budget would become"),
                ]
            ),
            "accounts" => (
                "Accounts",
                [
                    ("↑ ↓", "row before, row after, from a row of the table"),
                    ("← →", "figure before, figure after, within a row"),
                    ("Page↑ Page↓", "a page of rows"),
                    ("Home End", "first and last row"),
                    ("Enter", "open what makes the figure or row"),
                    ("F", "find rows"),
                    ("C", "copy the table for a spreadsheet"),
                ]
            ),
            "scope" => (
                "Scope",
                [
                    ("J K", "next item, item before"),
                    ("U", "next item that is still open"),
                    ("↑ ↓", "item after item, from one of them"),
                    ("Enter", "pick the item"),
                    ("W", "write an item"),
                    ("P", "paste a statement"),
                    ("E", "change the picked item"),
                    ("T", "trace it, or words of it, to a part"),
                    ("A", "add a part for it"),
                    ("Q", "ask the client about it"),
                ]
            ),
            "breakdown" => (
                "Breakdown",
                [
                    ("↑ ↓", "row before, row after in the outline"),
                    ("← →", "close and open a branch; to its parent, to its first part"),
                    ("Home End", "first and last line"),
                    ("Enter", "new sister after the line; Shift Enter: new part below it"),
                    ("Tab", "one level down while a line is typed; Shift Tab: up"),
                    ("Ctrl Enter", "take over the suggested part with all below it"),
                    ("Esc", "leave the line"),
                    ("F2", "rename"),
                    ("Alt ↑ ↓", "move up and down among its sisters"),
                    ("Ctrl D", "repeat for the sisters of its parent"),
                    ("Ctrl C V", "copy with all below it; paste it, or a list from a spreadsheet"),
                    ("L", "change its split logic"),
                    ("W", "work package, or part that is still to be broken down"),
                    ("Delete", "remove with all below it"),
                    ("N", "next finding"),
                    ("A", "accept the open finding"),
                ]
            ),
            "network" => (
                "Network",
                [
                    ("[ ]", "station before, station after on the driving chain"),
                    ("↑ ↓", "row before, row after, from a row of the table"),
                    ("Enter", "focus the package of the row or station"),
                ]
            ),
            "people" => (
                "People",
                [
                    (
                        "← ↑ → ↓",
                        "from crossing to crossing, empty ones too; left of the first the part of the plant"
                    ),
                    ("Home End", "first and last crossing of the row"),
                    ("Space", "pick the account and its manager"),
                    ("Enter", "name a manager; places an account where there is none"),
                    ("M", "merge the account into the one picked before"),
                    ("D", "divide it by parts or by unit"),
                    ("H", "hand it over, or all accounts of its manager"),
                    ("G", "group packages: put them into the account"),
                    ("Delete", "take the account away"),
                    ("O N B", "in the list of packages: offer, next step, step back"),
                ]
            ),
            "import" => (
                "Bringing files in",
                [
                    ("F", "choose files"),
                    ("D", "choose a folder"),
                    ("Enter", "take the rows, from the reason"),
                ]
            ),
            _ => null,
        };
}
