using Workshop.Web.Http;

namespace Workshop.Web.Features.Diary;

internal static class DiaryApi
{
    public static void Map(RouteGroupBuilder api) =>
        api.MapGet("/diary", (string? from, string? until, Api run) =>
            run.Read(new GetDiary.Request(from, until), GetDiary.Handle)).WithTags("Diary");
}
