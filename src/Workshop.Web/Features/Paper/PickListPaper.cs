using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

/// <summary>The walk through the stores as a paper: what is taken from where, a box for each line.</summary>
internal static class PickListPaper
{
    public static PaperDocument Of(CardHead head, GetPickList.Answer list, Uri back)
    {
        var blocks = new List<PaperBlock>
        {
            list.ToPick.Count == 0
                ? new PaperText("Nothing is to be picked.")
                : new PaperTable("To pick, in walking order",
                    [new("Place", 20), new("Part", 28), new("Take", 12, IsFigure: true), new("Lot, keeps until", 14), new("Why", 32), new("Picked", 7)],
                    [.. list.ToPick.Select(r => (IReadOnlyList<PaperCell>)
                    [
                        $"{r.Place}\n{r.PlaceCode}", $"{r.Name}\n{r.PartCode}{(r.For is { } other ? $", in place of {other}" : "")}",
                        new PaperCell(r.Packages is { } packages ? $"{r.Unit.Say(r.Quantity)}\n{packages}" : r.Unit.Say(r.Quantity), Strong: true),
                        string.Join("\n", new[] { r.Lot, r.ExpiresOn is { } on ? Days.Write(on) : null }.OfType<string>()), r.Why, new PaperCell("", Boxes: 1),
                    ])]),
        };
        if (list.Missing.Count > 0)
        {
            blocks.Add(new PaperTable("Not there",
                [new("Part", 28), new("Missing", 12, IsFigure: true), new("What there is to it", 66)],
                [.. list.Missing.Select(m => (IReadOnlyList<PaperCell>)[m.Name ?? m.PartCode, new PaperCell(m.Unit.Say(m.Quantity), Strong: true), m.Sentence])]));
        }

        if (list.OnBench.Count > 0)
        {
            blocks.Add(new PaperTable("On the bench already",
                [new("Part", 40), new("From", 30), new("Lot", 16), new("On the bench", 16, IsFigure: true), new("Goes back", 16, IsFigure: true)],
                [.. list.OnBench.Select(b => (IReadOnlyList<PaperCell>)
                    [$"{b.Name}\n{b.PartCode}", b.Place, b.Lot ?? "", b.Unit.Say(b.Quantity), b.Beyond > 0 ? b.Unit.Say(b.Beyond) : ""])]));
        }

        return new PaperDocument("Pick list", CardPaper.HeadOf(head), back, "Pick on the page", blocks, Cautions.Deference);
    }
}
