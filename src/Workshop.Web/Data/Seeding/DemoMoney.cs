using System.Globalization;
using System.Text;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.Findings;
using Workshop.Web.Features.Photos;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// Invented prices and tax; an estimate that an owner agreed to, a finding with a drawn picture that waits for an answer, and an
/// estimate of a visit to come that nobody has answered.
/// </summary>
internal sealed class DemoMoney(WorkshopDbContext db, DemoStaff staff)
{
    private const string Manager = "otto";
    private const string Advisor = "greta";
    private const string Technician = "tilda";
    private const int HoldsDays = 21;

    private readonly DemoPrices prices = SeedFiles.Prices();

    public async Task Write(Instant now, CancellationToken ct)
    {
        staff.Clock.Now = now;
        await SetPrices(ct);
        var cards = await db.JobCards.AsNoTracking().Where(c => c.State == JobCardState.CheckedIn || c.State == JobCardState.Booked)
            .OrderBy(c => c.State == JobCardState.Booked).ThenBy(c => c.StartsAt).ThenBy(c => c.Number).Take(2).ToListAsync(ct);
        var until = staff.Time.DayOf(now).PlusDays(HoldsDays);
        foreach (var card in cards)
        {
            var made = await staff.Do(Advisor, new MakeEstimate.Request { Number = card.Number, ValidUntil = until }, MakeEstimate.Handle, ct);
            if (card.State == JobCardState.CheckedIn)
            {
                await staff.Do(Advisor, new AnswerEstimate.Request
                {
                    Id = made.Id, Decision = EstimateDecision.Agreed, Way = AnswerWay.InPerson, Remark = "Signed at the counter.",
                }, AnswerEstimate.Handle, ct);
                await Find(card.Number, until, ct);
            }
        }
    }

    private async Task SetPrices(CancellationToken ct)
    {
        foreach (var rate in prices.TaxRates)
        {
            await staff.Do(Manager, new AddTaxRate.Request { Code = rate.Code, ValidFrom = rate.ValidFrom, Name = rate.Name, Percent = rate.Percent }, AddTaxRate.Handle, ct);
        }

        var money = await staff.Look(Manager, new GetMoney.Request(), GetMoney.Handle, ct);
        await staff.Do(Manager, new EditMoney.Request
        {
            RowVersion = money.RowVersion, Currency = prices.Currency, LabourNetPerHour = prices.LabourNetPerHour, UsualTax = prices.UsualTax,
        }, EditMoney.Handle, ct);

        var list = new StringBuilder("part;price;tax\n");
        foreach (var part in prices.Parts)
        {
            list.Append(CultureInfo.InvariantCulture, $"{part.Code};{part.Price};{part.Tax}\n");
        }

        await staff.Do(Manager, new ImportPartPrices.Request { FileName = "prices.json", Csv = list.ToString() }, ImportPartPrices.Handle, ct);
    }

    private async Task Find(int number, LocalDate until, CancellationToken ct)
    {
        var found = await staff.Do(Technician, new RecordFinding.Request
        {
            Number = number, Place = prices.Finding.Place, Text = prices.Finding.Text, Gravity = FindingGravity.Unsafe,
        }, RecordFinding.Handle, ct);
        await staff.Do(Technician, new AddPhotos.Request
        {
            Number = number, FindingId = found.Id, Caption = prices.Finding.Caption, Files = [new AddPhotos.File("drawn.png", DemoPicture.Draw())],
        }, AddPhotos.Handle, ct);
        await staff.Do(Advisor, new MakeEstimate.Request
        {
            Number = number, FindingId = found.Id, ValidUntil = until,
            Others =
            [
                new MakeEstimate.Other { Text = prices.Finding.Work, Minutes = prices.Finding.Minutes },
                new MakeEstimate.Other { Text = prices.Finding.Parts, Quantity = 1, UnitPrice = prices.Finding.Price },
            ],
        }, MakeEstimate.Handle, ct);
    }
}
