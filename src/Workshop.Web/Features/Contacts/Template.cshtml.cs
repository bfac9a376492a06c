using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Contacts;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>The texts that messages are drafted from, for the manager to change.</summary>
public sealed class TemplateModel : WorkshopPage
{
    private const string VersionField = "Input.RowVersion";

    [BindProperty(SupportsGet = true)]
    public Guid? Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool New { get; set; }

    [BindProperty]
    public EditTemplate.Request Input { get; set; } = new();

    public IReadOnlyList<TemplateRow> Templates { get; private set; } = [];

    /// <summary>What the fields give for an invented owner; nothing where they are not in order.</summary>
    public (string Subject, string Body)? Preview { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        await Load();
        Id ??= New || Templates.Count == 0 ? null : Templates[0].Id;
        if (Id is { } id)
        {
            if (!(await Read(new GetTemplate.Request(id), GetTemplate.Handle)).TryGet(out var found, out var problem))
            {
                return Refused(problem);
            }

            Input = new EditTemplate.Request
            {
                RowVersion = found.RowVersion, Name = found.Name, Channel = found.Channel, Subject = found.Subject, Body = found.Body,
            };
            Show();
        }

        return Page();
    }

    public Task<IActionResult> OnPost() => Id is { } id
        ? Write(Input with { Id = id }, EditTemplate.Handle, saved => Saved(saved.Id), Again)
        : Write(
            new AddTemplate.Request { Name = Input.Name, Channel = Input.Channel, Subject = Input.Subject, Body = Input.Body },
            AddTemplate.Handle, made => Saved(made.Id), Again);

    /// <summary>The fields as typed, and what they would give; nothing is written.</summary>
    public async Task<IActionResult> OnPostPreview()
    {
        if (Contacts.Templates.Refuses(Input with { Subject = Input.Subject ?? "", Body = Input.Body ?? "" }) is { } problem)
        {
            problem.AddTo(ModelState);
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return await Again();
    }

    private RedirectResult Saved(Guid id)
    {
        Done = "The template is saved.";
        return Redirect($"/messages/template?id={id}");
    }

    private async Task<IActionResult> Again()
    {
        await Load();
        if (Response.StatusCode == StatusCodes.Status412PreconditionFailed && Templates.FirstOrDefault(t => t.Id == Id) is { } stands)
        {
            // The next send is made in the knowledge that somebody changed it.
            ModelState.Remove(VersionField);
            Input = Input with { RowVersion = stands.RowVersion };
        }

        Show();
        return Page();
    }

    private async Task Load() => Templates = (await Read(new ListTemplates.Request(), ListTemplates.Handle)).Value.Templates;

    private void Show()
    {
        if (Input is { Subject: { } subject, Body: { } body } && Contacts.Templates.Refuses(Input) is null)
        {
            Preview = (
                TemplateRow.Example("subject", subject, TemplateFields.OfSubject, (text, values) => text.FillLine(values)),
                TemplateRow.Example("body", body, TemplateFields.OfBody, (text, values) => text.Fill(values)));
        }
    }
}
