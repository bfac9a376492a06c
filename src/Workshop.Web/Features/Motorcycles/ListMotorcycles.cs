using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>
/// Motorcycles by registration, a page at a time: the next page starts after the last registration of this one. Retired ones
/// are found by a search only.
/// </summary>
public static class ListMotorcycles
{
    public sealed record Request(string? After = null, string? Search = null, int? Take = null);

    public sealed record Row(Guid Id, string Registration, string Maker, string Model, int ModelYear, string? Owner, bool Retired);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Search).IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var rows = from motorcycle in db.Motorcycles.AsNoTracking()
                   join person in db.People on motorcycle.OwnerId equals person.Id into owners
                   from owner in owners.DefaultIfEmpty()
                   select new { motorcycle, owner };
        if (request.Search is { Length: > 0 } search)
        {
            var like = $"%{Slice.EscapeLike(search)}%";
            rows = rows.Where(r => EF.Functions.ILike(r.motorcycle.Registration, like)
                || EF.Functions.ILike(r.motorcycle.Model, like)
                || EF.Functions.ILike(r.owner!.Name, like));
        }

        else
        {
            rows = rows.Where(r => !r.motorcycle.Retired);
        }

        if (request.After is { Length: > 0 } after)
        {
            rows = rows.Where(r => string.Compare(r.motorcycle.Registration, after) > 0);
        }

        return await rows
            .OrderBy(r => r.motorcycle.Registration)
            .Select(r => new Row(r.motorcycle.Id, r.motorcycle.Registration, r.motorcycle.Maker, r.motorcycle.Model,
                r.motorcycle.ModelYear, r.owner!.Name, r.motorcycle.Retired))
            .ToSlice(request.Take, r => r.Registration, ct);
    }
}
