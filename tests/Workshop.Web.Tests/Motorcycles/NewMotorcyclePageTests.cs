using System.Net;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Motorcycles;

public sealed class NewMotorcyclePageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Address = "/motorcycles/new";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_form_with_faults_comes_back_with_everything_that_was_typed()
    {
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);
        var typed = new Dictionary<string, string?>(Typed("ÖD 700 <&\">"))
        {
            ["Input.Model"] = "",
            ["Input.ModelYear"] = "1066",
            ["Input.OdometerUnit"] = "1",
            ["Input.OwnerName"] = "O'Neill & Söhne",
            ["Input.OwnerEmail"] = "o@example.org",
        };

        var answer = await advisor.Send(Address, typed);

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains(answer.Faults, fault => fault.StartsWith("Model is empty", StringComparison.Ordinal));
        Assert.Contains("Model year is 1066: a whole number from 1885 to 2100 is allowed.", answer.Faults);
        Assert.All(typed, field => Assert.Equal(field.Value, answer.ValueOf(field.Key)));
    }

    [Fact]
    public async Task The_mended_form_puts_the_motorcycle_in_the_books_and_says_so()
    {
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);

        var refused = await advisor.Send(Address, new(Typed("ÖD 701")) { ["Input.ModelYear"] = "" });
        var added = await advisor.Send(refused, Address, new() { ["Input.ModelYear"] = "2020" });

        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Equal(HttpStatusCode.Redirect, added.Status);
        Assert.Contains("ÖD 701 is in the books.", (await advisor.Open(added.Location!)).MainText, StringComparison.Ordinal);
        Assert.Equal(1, await app.Look(db => db.Motorcycles.CountAsync(m => m.Registration == "ÖD 701", Ct)));
    }

    [Fact]
    public async Task A_form_sent_twice_writes_once()
    {
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await advisor.Open(Address);

        await advisor.Send(page, Address, Typed("ÖD 702"));
        var second = await advisor.Send(page, Address, Typed("ÖD 702"));

        Assert.Equal(HttpStatusCode.Redirect, second.Status);
        Assert.Equal(1, await app.Look(db => db.Motorcycles.CountAsync(m => m.Registration == "ÖD 702", Ct)));
    }

    [Theory]
    [InlineData("abc")]
    [InlineData("1.234.567,89")]
    public async Task What_is_no_number_is_told_by_the_label_with_what_is_allowed(string typed)
    {
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);

        var answer = await advisor.Send(Address, new(Typed("ÖD 705")) { ["Input.ModelYear"] = typed });

        Assert.Equal([$"Model year is \"{typed}\": a whole number is allowed."], answer.Faults);
        Assert.Equal(typed, answer.ValueOf("Input.ModelYear"));
    }

    [Fact]
    public async Task A_form_that_was_sent_already_comes_back_filled_under_a_new_key_and_says_what_stands()
    {
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await advisor.Open(Address);

        var first = await advisor.Send(page, Address, Typed("ÖD 706"));
        var changed = await advisor.Send(page, Address, Typed("ÖD 707"));
        var meant = await advisor.Send(changed, Address, []);

        Assert.Equal(HttpStatusCode.Redirect, first.Status);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, changed.Status);
        Assert.StartsWith("This form was sent once already, with other values, and what was written then stands.", Assert.Single(changed.Faults), StringComparison.Ordinal);
        Assert.Equal("ÖD 707", changed.ValueOf("Input.Registration"));
        Assert.NotEqual(page.ValueOf("_key"), changed.ValueOf("_key"));
        Assert.Equal(HttpStatusCode.Redirect, meant.Status);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);

        var answer = await advisor.Send(Address, new(Typed("ÖD 703")) { ["__RequestVerificationToken"] = null });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Equal(0, await app.Look(db => db.Motorcycles.CountAsync(m => m.Registration == "ÖD 703", Ct)));
    }

    [Fact]
    public async Task A_technician_does_not_get_the_form()
    {
        var technician = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Open(Address)).Status);
    }

    private static Dictionary<string, string?> Typed(string registration) => new()
    {
        ["Input.Registration"] = registration,
        ["Input.Maker"] = "Testwerk",
        ["Input.Model"] = "Twin 600",
        ["Input.ModelYear"] = "2020",
        ["Input.EngineModelId"] = TestWorkshop.EngineModel.ToString(),
        ["Input.InServiceSince"] = "2020-05-01",
    };
}
