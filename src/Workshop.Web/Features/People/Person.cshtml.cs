using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

public sealed class PersonModel : WorkshopPage
{
    private const string VersionField = "Input.RowVersion";

    [BindProperty(SupportsGet = true)]
    public Guid PersonId { get; set; }

    [BindProperty]
    public EditPerson.Request Input { get; set; } = new();

    /// <summary>The version with which a new password is asked for.</summary>
    [BindProperty]
    public uint? Version { get; set; }

    public ListPeople.Row Person { get; private set; } = null!;

    public ResetPassword.Answer? Reset { get; private set; }

    public bool MayManage { get; private set; }

    public Task<IActionResult> OnGet() => Show(asItStands: true);

    public async Task<IActionResult> OnPost() => await May(Policies.Manages)
        ? await Write(
            Input with { Id = PersonId },
            EditPerson.Handle,
            _ =>
            {
                Done = "Saved.";
                return Redirect($"/people/{PersonId}");
            },
            again: () => Show(asItStands: false))
        : Forbid();

    public async Task<IActionResult> OnPostPassword()
    {
        if (!await May(Policies.Manages))
        {
            return Forbid();
        }

        // The other form of the page was not sent.
        ModelState.Clear();
        await Write(
            new ResetPassword.Request { Id = PersonId, RowVersion = Version },
            ResetPassword.Handle,
            reset =>
            {
                Reset = reset;
                return Page();
            },
            again: () => Task.FromResult<IActionResult>(Page()));
        return await Show(asItStands: true);
    }

    private async Task<IActionResult> Show(bool asItStands)
    {
        if (!(await Read(new GetPerson.Request(PersonId), GetPerson.Handle)).TryGet(out var person, out var problem))
        {
            return Refused(problem);
        }

        (Person, MayManage) = (person, await May(Policies.Manages));
        if (asItStands)
        {
            Input = new EditPerson.Request
            {
                RowVersion = person.RowVersion, Name = person.Name, Phone = person.Phone, Email = person.Email, UserName = person.UserName,
                Roles = [.. person.Roles], Locked = person.Locked,
            };
        }
        else if (Response.StatusCode == StatusCodes.Status412PreconditionFailed)
        {
            // What stands is shown above the form: the next send is made in its knowledge, so it carries that version.
            ModelState.Remove(VersionField);
            Input = Input with { RowVersion = person.RowVersion };
        }

        return Page();
    }
}
