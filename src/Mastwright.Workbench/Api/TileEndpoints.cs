using Mastwright.Pictures.Drawings;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Tiles;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace Mastwright.Workbench.Api;

/// <summary>Tiles of the plan's ground. Their addresses may carry the ground's hash ("?ground=…"): then a browser may keep them for good.</summary>
internal static class TileEndpoints
{
    internal static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/tiles/heights/{zoom:int}/{x:int}/{y:int}.png", Heights)
            .Picture("image/png", "Heights of a web map tile, 256 pixels a side: metres = red × 256 + green + blue / 256 − 32768; 0 m where nothing is known.");
        api.MapGet("/tiles/land/{theme}/{zoom:int}/{x:int}/{y:int}.png", Land)
            .Picture("image/png", "What lies on the ground of a web map tile: water, trees, houses; hatched where no height is known. The theme is light or dark.");
    }

    private static IResult Heights(PlanDesk desk, HttpContext context, int zoom, int x, int y, string? ground) =>
        Tile(desk, context, new(zoom, x, y), "h", ground, (tiles, tile) => tiles.HeightPng(tile));

    private static IResult Land(PlanDesk desk, HttpContext context, string theme, int zoom, int x, int y, string? ground) => theme is "light" or "dark"
        ? Tile(desk, context, new(zoom, x, y), theme, ground, (tiles, tile) => tiles.LandPng(tile, theme == "dark" ? Theme.Dark : Theme.Light))
        : ApiAnswer.Wrong("the theme is light or dark");

    private static IResult Tile(PlanDesk desk, HttpContext context, TileAddress tile, string kind, string? ground, Func<GroundTiles, TileAddress, byte[]> make)
    {
        if (!tile.Exists)
        {
            return ApiAnswer.Wrong($"there is no tile {tile}; zooms go from 0 to {TileAddress.MostZoom}");
        }

        return ApiAnswer.Of(desk, (view, _) =>
        {
            EntityTagHeaderValue tag = new($"\"{kind}-{view.GroundHash}-{tile.Zoom}-{tile.X}-{tile.Y}\"");
            context.Response.Headers.CacheControl = ground == view.GroundHash ? "private, max-age=31536000, immutable" : "private, no-cache";
            // What the browser has already is not made again only to be found the same.
            bool isHeld = context.Request.GetTypedHeaders().IfNoneMatch.Any(held => held.Compare(tag, useStrongComparison: false));
            context.Response.Headers.ETag = tag.ToString();
            return isHeld ? Results.StatusCode(StatusCodes.Status304NotModified) : Results.Bytes(make(view.Tiles!, tile), "image/png");
        });
    }
}
