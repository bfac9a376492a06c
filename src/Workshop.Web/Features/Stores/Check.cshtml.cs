using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

public sealed class CheckModel : WorkshopPage
{
    public CheckLedger.Answer Found { get; private set; } = null!;

    public async Task OnGet() => Found = (await Read(new CheckLedger.Request(), CheckLedger.Handle)).Value;
}
