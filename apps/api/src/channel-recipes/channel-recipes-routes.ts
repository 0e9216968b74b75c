import {
  ChannelRecipe,
  ChannelRecipeChange,
  ChannelRecipeList,
  ChannelRecipeNew,
  IdParams,
} from '@pullbook/contracts';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { replyRecord, seenRevision } from '../plumbing/etags.js';
import { changeRecipe } from './change-recipe.js';
import { createRecipe } from './create-recipe.js';
import { deleteRecipe } from './delete-recipe.js';
import { findRecipes } from './find-recipes.js';
import { getRecipe } from './get-recipe.js';
import '../plumbing/app-parts.js';

const tags = ['channel recipes'];
const forTuners = { config: { roles: ['owner', 'tuner'] as const } };
const noun = 'channel-recipe';

/** Channel recipes: how the workshop reads the logs of each logger. */
export const channelRecipesRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    '/channel-recipes',
    { schema: { tags, response: { 200: ChannelRecipeList } } },
    async ({ actor }) => ({ items: await findRecipes(actor.db) }),
  );

  app.get(
    '/channel-recipes/:id',
    { schema: { tags, params: IdParams, response: { 200: ChannelRecipe } } },
    async ({ actor, params }, reply) => replyRecord(reply, await getRecipe(actor.db, params.id)),
  );

  app.post(
    '/channel-recipes',
    { ...forTuners, schema: { tags, body: ChannelRecipeNew, response: { 201: ChannelRecipe } } },
    async ({ actor, body }, reply) => {
      const recipe = await createRecipe(actor, body);
      app.announce(actor.workshopId, { noun, id: recipe.id, visitId: null });
      return reply.code(201).send(replyRecord(reply, recipe));
    },
  );

  app.patch(
    '/channel-recipes/:id',
    {
      ...forTuners,
      schema: { tags, params: IdParams, body: ChannelRecipeChange, response: { 200: ChannelRecipe } },
    },
    async (request, reply) => {
      const { actor, params, body } = request;
      const recipe = await changeRecipe(actor, params.id, seenRevision(request), body);
      app.announce(actor.workshopId, { noun, id: recipe.id, visitId: null });
      return replyRecord(reply, recipe);
    },
  );

  app.delete(
    '/channel-recipes/:id',
    { ...forTuners, schema: { tags, params: IdParams, response: { 204: z.null() } } },
    async (request, reply) => {
      const { actor, params } = request;
      await deleteRecipe(actor, params.id, seenRevision(request));
      app.announce(actor.workshopId, { noun, id: params.id, visitId: null });
      return reply.code(204).send(null);
    },
  );
};
