using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Web.Data;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>The owner of a motorcycle: what may be used to reach them, when they were reached, and their erasure.</summary>
public sealed class OwnerModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    [BindProperty]
    public GiveConsent.Request Agreed { get; set; } = new();

    [BindProperty]
    public RecordContact.Request Spoken { get; set; } = new();

    [BindProperty]
    public ErasePerson.Request Erase { get; set; } = new();

    public IReadOnlyList<ListConsents.Row> Consents { get; private set; } = [];

    public IReadOnlyList<ListContacts.Row> Contacts { get; private set; } = [];

    public bool MayManage { get; private set; }

    /// <summary>The channels to which no consent stands.</summary>
    public IReadOnlyList<ContactChannel> NotAgreed =>
        [.. Enum.GetValues<ContactChannel>().Except(Consents.Where(c => c.WithdrawnAt is null).Select(c => c.Channel))];

    private string Here => $"{Address}/owner";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostConsent() => await Of(owner => Write(
        Agreed with { PersonId = owner },
        GiveConsent.Handle,
        given => Back($"The consent to be reached by {given.Channel.Spoken()} is entered."),
        again: Show,
        prefix: nameof(Agreed)));

    public async Task<IActionResult> OnPostWithdraw(Guid consent, uint? version) => await Of(_ => Write(
        new WithdrawConsent.Request { Id = consent, RowVersion = version },
        WithdrawConsent.Handle,
        gone => Back($"The consent to be reached by {gone.Channel.Spoken()} is withdrawn.{(gone.Discarded > 0 ? $" {gone.Discarded} waiting messages are discarded." : "")}"),
        again: Show,
        prefix: ""));

    public async Task<IActionResult> OnPostContact() => await Of(owner => Write(
        Spoken with { PersonId = owner, MotorcycleId = Id },
        RecordContact.Handle,
        _ => Back("The contact is recorded."),
        again: Show,
        prefix: nameof(Spoken)));

    public async Task<IActionResult> OnPostErase() => await May(Policies.Manages)
        ? await Of(owner => Write(
            Erase with { Id = owner },
            ErasePerson.Handle,
            erased => Back($"The person is erased: {erased.Remarks} remarks and {erased.Messages} messages are blanked, {erased.Motorcycles} motorcycles have no owner on record."),
            again: Show,
            prefix: nameof(Erase)))
        : Forbid();

    protected override async Task Prepare()
    {
        MayManage = await May(Policies.Manages);
        if (Motorcycle.Owner is not { } owner)
        {
            return;
        }

        Consents = (await Read(new ListConsents.Request(owner.Id), ListConsents.Handle)).Value.Consents;
        Contacts = (await Read(new ListContacts.Request(owner.Id), ListContacts.Handle)).Value.Rows;
        if (Agreed.GivenOn is null && HttpMethods.IsGet(Request.Method))
        {
            Agreed = Agreed with { GivenOn = Today };
        }
    }

    private RedirectResult Back(string done)
    {
        Done = done;
        return Redirect(Here);
    }

    /// <summary>The forms speak of whoever owns the motorcycle as it stands.</summary>
    private async Task<IActionResult> Of(Func<Guid, Task<IActionResult>> write)
    {
        if (!(await Read(new GetMotorcycle.Request(Id), GetMotorcycle.Handle)).TryGet(out var motorcycle, out var problem))
        {
            return Refused(problem);
        }

        return motorcycle.Owner is { } owner ? await write(owner.Id) : await Show();
    }
}
