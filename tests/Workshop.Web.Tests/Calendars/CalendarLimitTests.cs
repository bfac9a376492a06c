using System.Net;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Calendars;

public sealed class CalendarLimitTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    [Fact]
    public async Task Whoever_tries_out_links_is_held_up()
    {
        var client = app.Anonymous();
        var answers = new List<HttpStatusCode>();
        for (var attempt = 0; attempt < 61; attempt++)
        {
            answers.Add((await client.GetAsync($"/calendar/guess-{attempt}.ics", TestContext.Current.CancellationToken)).StatusCode);
        }

        Assert.All(answers.Take(60), status => Assert.Equal(HttpStatusCode.NotFound, status));
        Assert.Equal(HttpStatusCode.TooManyRequests, answers[60]);
    }
}
