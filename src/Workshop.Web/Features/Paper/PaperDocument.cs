using Workshop.Web.Features.Shared.Drawings;

namespace Workshop.Web.Features.Paper;

/// <summary>
/// What stands on a paper, before anybody draws it: the page and the PDF are both drawn from this, so that they say the same.
/// </summary>
/// <param name="Title">What the paper is.</param>
/// <param name="Head">Lines below the title: whose card, when, by which specification.</param>
/// <param name="Back">The address that the code leads to.</param>
/// <param name="BackWords">What lies there.</param>
/// <param name="Foot">On every sheet.</param>
public sealed record PaperDocument(
    string Title, IReadOnlyList<string> Head, Uri Back, string BackWords, IReadOnlyList<PaperBlock> Blocks, string Foot);

public abstract record PaperBlock;

public sealed record PaperHeading(string Text) : PaperBlock;

/// <param name="Strong">Must not be missed.</param>
public sealed record PaperText(string Text, bool Strong = false) : PaperBlock;

/// <summary>Lines to be filled in by hand, side by side.</summary>
public sealed record PaperFields(IReadOnlyList<string> Names) : PaperBlock;

/// <summary>A table whose head is repeated on every sheet that it goes on to; a row is never torn.</summary>
public sealed record PaperTable(string Caption, IReadOnlyList<PaperColumn> Columns, IReadOnlyList<IReadOnlyList<PaperCell>> Rows) : PaperBlock;

/// <param name="Share">Of the width, beside the shares of the others.</param>
/// <param name="IsFigure">Stands at the right, in tabular figures.</param>
public sealed record PaperColumn(string Name, double Share, bool IsFigure = false);

/// <summary>Pictures side by side, each with its words below.</summary>
/// <param name="Name">What they show.</param>
public sealed record PaperPictures(string Name, IReadOnlyList<PaperPicture> Pictures) : PaperBlock;

/// <param name="Address">Where the page fetches it.</param>
/// <param name="LargeAddress">Where a reader of the page finds it large.</param>
/// <param name="Words">Below it, and for those who do not see it; empty where nobody said anything.</param>
/// <param name="Jpeg">The picture itself, for the PDF; the page needs none.</param>
public sealed record PaperPicture(string Address, string LargeAddress, string Words, byte[]? Jpeg = null);

/// <param name="Boxes">Boxes to tick, after the text.</param>
/// <param name="Strong">What the eye looks for.</param>
/// <param name="Strip">A clearance drawn, below the text; the cells beside it say the same.</param>
public sealed record PaperCell(string Text, int Boxes = 0, bool Strong = false, StripGeometry? Strip = null)
{
    /// <summary>Room to write by hand.</summary>
    public static readonly PaperCell Blank = new("");

    public static implicit operator PaperCell(string text) => new(text);

    public static PaperCell FromString(string text) => new(text);
}
