using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

internal static class ContactsApi
{
    public static void Map(RouteGroupBuilder api)
    {
        var contacts = api.MapGroup("").WithTags("Contacts").RequireAuthorization(Policies.Books);
        var manages = api.MapGroup("").WithTags("Contacts").RequireAuthorization(Policies.Manages);

        contacts.MapGet("/calls", (string? after, int? take, int? withinWeeks, int? quietDays, Api run) => run.Read(
            new ListCalls.Request { After = after, Take = take, WithinWeeks = withinWeeks, QuietDays = quietDays }, ListCalls.Handle));
        contacts.MapGet("/contacts", (Guid? personId, string? after, int? take, Api run) =>
            run.Read(new ListContacts.Request(personId, after, take), ListContacts.Handle));
        contacts.MapPost("/contacts", (RecordContact.Request body, Api run) => run.Post(body, RecordContact.Handle));
        contacts.MapGet("/consents", (Guid? personId, Api run) => run.Read(new ListConsents.Request(personId), ListConsents.Handle));
        contacts.MapPost("/consents", (GiveConsent.Request body, Api run) => run.Post(body, GiveConsent.Handle));
        contacts.MapPut("/consents/{id:guid}/withdrawal", (Guid id, Api run) =>
            run.Change(new WithdrawConsent.Request { Id = id, RowVersion = run.IfMatch }, WithdrawConsent.Handle));
        contacts.MapGet("/messages", (string? after, int? take, string? state, Guid? motorcycleId, Api run) => run.Read(
            new ListMessages.Request { After = after, Take = take, State = state, MotorcycleId = motorcycleId }, ListMessages.Handle));
        contacts.MapGet("/messages/draft", (Guid? motorcycleId, Guid? templateId, Api run) =>
            run.Read(new DraftMessage.Request(motorcycleId, templateId), DraftMessage.Handle));
        contacts.MapGet("/messages/{id:guid}", (Guid id, Api run) => run.Read(new GetMessage.Request(id), GetMessage.Handle));
        contacts.MapPost("/messages", (QueueMessage.Request body, SmtpOptions mail, Api run) => run.Create(
            body with { MailIsSetUp = mail.IsSetUp }, QueueMessage.Handle, made => $"/api/v1/messages/{made.Id}"));
        contacts.MapPut("/messages/{id:guid}/decision", (Guid id, DecideMessage.Request body, SmtpOptions mail, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch, MailIsSetUp = mail.IsSetUp }, DecideMessage.Handle));
        contacts.MapGet("/message-templates", (Api run) => run.Read(new ListTemplates.Request(), ListTemplates.Handle));
        contacts.MapGet("/message-templates/{id:guid}", (Guid id, Api run) => run.Read(new GetTemplate.Request(id), GetTemplate.Handle));
        manages.MapPost("/message-templates", (AddTemplate.Request body, Api run) =>
            run.Create(body, AddTemplate.Handle, made => $"/api/v1/message-templates/{made.Id}"));
        manages.MapPut("/message-templates/{id:guid}", (Guid id, EditTemplate.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, EditTemplate.Handle));
        manages.MapPost("/people/{id:guid}/erasure", (Guid id, ErasePerson.Request body, Api run) =>
            run.Post(body with { Id = id }, ErasePerson.Handle));
    }
}
